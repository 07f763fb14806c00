#include "door_joints.h"

#include <array>

#include "door_plan.h"
#include "half_lap.h"
#include "loose_tenon.h"
#include "wedge.h"

namespace haunch {
namespace {

const TenonDesign& tenon_of(const DoorEnd& end) {
  return end.rail ? end.plan.rail_tenons[*end.rail] : end.plan.muntin_tenon;
}

const MortiseDesign& mortise_of(const DoorEnd& end) {
  return end.rail ? end.plan.rail_mortises[*end.rail] : end.plan.muntin_mortise;
}

const PinDesign& pins_of(const DoorEnd& end) {
  return end.rail ? end.plan.rail_pins[*end.rail] : end.plan.muntin_pins;
}

/// An end without a tenon, as the edge that it stands on asks for.
FlatEnd flat_end(const DoorEnd& end) {
  const DoorPlan& plan = end.plan;
  const MitredEdges looked_through =
      end.rail ? plan.frame.moulded_edges(*end.rail) : MitredEdges{true, true};
  return {plan.flat_reach(), plan.edge.set_back(), looked_through, plan.edge.rebated()};
}

EndJoints tenons(const DoorEnd& end) {
  EndJoints joints;
  TenonDesign tenon = tenon_of(end);
  if (mortise_of(end).through) tenon.depth = end.receiver - tenon.set_back;
  joints.push_back(std::make_unique<Tenons>(std::move(tenon), mortise_of(end)));
  if (const PinDesign& pins = pins_of(end); !pins.empty())
    joints.push_back(std::make_unique<Pins>(pins));
  if (mortise_of(end).flare) joints.push_back(std::make_unique<Wedges>());
  return joints;
}

EndJoints loose_tenons(const DoorEnd& end) {
  EndJoints joints;
  joints.push_back(std::make_unique<LooseTenons>(tenon_of(end), mortise_of(end), flat_end(end)));
  return joints;
}

EndJoints dowels(const DoorEnd& end) {
  EndJoints joints;
  joints.push_back(std::make_unique<Dowels>(
      end.rail ? end.plan.rail_dowels[*end.rail] : end.plan.muntin_dowels, flat_end(end)));
  return joints;
}

/// At a corner the edges close up as shoulders do; a rail let in between two has some play.
EndJoints half_lap(const DoorEnd& end) {
  const DoorPlan& plan = end.plan;
  const bool between = !plan.frame.is_end_rail(*end.rail);
  const Length edge = between ? floor_half(plan.join.fit_allowance) : Length();
  EndJoints joints;
  joints.push_back(std::make_unique<HalfLap>(LapDesign{end.receiver, plan.lap_from_face, edge, {}},
                                             flat_end(end)));
  return joints;
}

EndJoints mitre(const DoorEnd& end) {
  EndJoints joints;
  joints.push_back(std::make_unique<Mitre>(end.receiver, end.plan.spline));
  return joints;
}

constexpr Key kTwinKeys[] = {"twin.width", "twin.between", "twin.from_face"};
constexpr Key kLooseKeys[] = {"loose_tenon.wall"};
constexpr Key kWedgeKeys[] = {"wedge.thickness", "wedge.length"};
constexpr Key kDowelKeys[] = {"dowel.diameter",         "dowel.depth", "dowel.edge",
                              "dowel.bottom_clearance", "dowel.wall",  "dowel.spacing"};
constexpr Key kLapKeys[] = {"half_lap.from_face"};
constexpr Key kSplineKeys[] = {"spline.depth", "spline.room", "spline.wall"};

// In the order of their words.
constexpr std::array kJoints{
    DoorJoint{.word = JointWord::haunched, .made = tenons, .tenons = true, .haunches = true},
    DoorJoint{.word = JointWord::twin,
              .made = tenons,
              .keys = kTwinKeys,
              .tenons = true,
              .haunches = true,
              .twin = true},
    DoorJoint{.word = JointWord::loose,
              .made = loose_tenons,
              .keys = kLooseKeys,
              .tenons = true,
              .loose = true},
    DoorJoint{.word = JointWord::through,
              .made = tenons,
              .keys = kWedgeKeys,
              .tenons = true,
              .haunches = true,
              .through = true,
              .wedged = true},
    DoorJoint{.word = JointWord::bridle,
              .made = tenons,
              .tenons = true,
              .through = true,
              .open_end = true},
    DoorJoint{.word = JointWord::dowel, .made = dowels, .keys = kDowelKeys},
    DoorJoint{.word = JointWord::half_lap, .made = half_lap, .keys = kLapKeys, .lapped = true},
    DoorJoint{.word = JointWord::mitre, .made = mitre, .keys = kSplineKeys, .lapped = true}};

static_assert(kJoints[static_cast<std::size_t>(JointWord::mitre)].word == JointWord::mitre);

}  // namespace

std::span<const DoorJoint> door_joints() {
  return kJoints;
}

const DoorJoint& door_joint(JointWord word) {
  return kJoints[static_cast<std::size_t>(word)];
}

EndJoints joints_of_rail(const DoorPlan& plan, std::size_t rail, Length stile) {
  return plan.joint_of(rail).made({plan, rail, stile});
}

EndJoints joints_of_muntin(const DoorPlan& plan) {
  return plan.joint_at(JointPlace::muntin).made({plan, {}, {}});
}

}  // namespace haunch
