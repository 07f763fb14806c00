#include "door_joints.h"

#include "half_lap.h"
#include "loose_tenon.h"
#include "wedge.h"

namespace haunch {
namespace {

/// An end of a rail or, where none is said, of a muntin.
struct DoorEnd {
  const DoorPlan& plan;
  std::optional<std::size_t> rail;
  Length receiver;  // how wide what it ends on is

  const TenonDesign& tenon() const { return rail ? plan.rail_tenons[*rail] : plan.muntin_tenon; }
  const MortiseDesign& mortise() const {
    return rail ? plan.rail_mortises[*rail] : plan.muntin_mortise;
  }
  const DowelDesign& dowels() const { return rail ? plan.rail_dowels[*rail] : plan.muntin_dowels; }
};

EndJoints tenons(const DoorEnd& end) {
  EndJoints joints;
  TenonDesign tenon = end.tenon();
  if (end.mortise().through) tenon.depth = end.receiver;
  joints.push_back(std::make_unique<Tenons>(std::move(tenon), end.mortise()));
  if (end.rail && !end.plan.rail_pins[*end.rail].empty())
    joints.push_back(std::make_unique<Pins>(end.plan.rail_pins[*end.rail]));
  if (end.mortise().flare) joints.push_back(std::make_unique<Wedges>());
  return joints;
}

EndJoints loose_tenons(const DoorEnd& end) {
  EndJoints joints;
  joints.push_back(std::make_unique<LooseTenons>(end.tenon(), end.mortise()));
  return joints;
}

EndJoints dowels(const DoorEnd& end) {
  EndJoints joints;
  joints.push_back(std::make_unique<Dowels>(end.dowels()));
  return joints;
}

/// At a corner the edges close up as shoulders do; a rail let in between two has some play.
EndJoints half_lap(const DoorEnd& end) {
  const DoorPlan& plan = end.plan;
  const bool between = !plan.frame.is_end_rail(*end.rail);
  const Length edge = between ? floor_half(plan.join.fit_allowance) : Length();
  EndJoints joints;
  joints.push_back(
      std::make_unique<HalfLap>(LapDesign{end.receiver, plan.lap_from_face, edge, {}}));
  return joints;
}

EndJoints mitre(const DoorEnd& end) {
  EndJoints joints;
  joints.push_back(std::make_unique<Mitre>(end.receiver, end.plan.spline));
  return joints;
}

EndJoints joints_of(JointWord joint, const DoorEnd& end) {
  switch (joint) {
    case JointWord::loose:
      return loose_tenons(end);
    case JointWord::dowel:
      return dowels(end);
    case JointWord::half_lap:
      return half_lap(end);
    case JointWord::mitre:
      return mitre(end);
    case JointWord::haunched:
    case JointWord::twin:
    case JointWord::through:
    case JointWord::bridle:
      break;
  }
  return tenons(end);
}

}  // namespace

EndJoints joints_of_rail(const DoorPlan& plan, std::size_t rail, Length stile) {
  return joints_of(plan.joint_of(rail), {plan, rail, stile});
}

EndJoints joints_of_muntin(const DoorPlan& plan) {
  return joints_of(plan.join.at(JointPlace::muntin), {plan, {}, {}});
}

}  // namespace haunch
