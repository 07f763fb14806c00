#include "half_lap.h"

#include <algorithm>
#include <utility>

#include "joint_rules.h"

namespace haunch {
namespace {

constexpr Rule kSeatOfHalves{"half-lap-seat", "between the two halves of a lap",
                             "glue holds a lap only where its halves lie on each other"};
constexpr Rule kEdge{"half-lap-shoulder", "between the edge of a lap and the shoulder beside it",
                     "at a corner both shoulders close"};
constexpr Rule kFit{"half-lap-fit", "of play at the edges of a lap, both together",
                    "a lap tighter than none will not go in, one looser than 0.010 in shows "
                    "(trade practice)"};

constexpr Measure kBuilt[] = {{Figure::bearing, &kSeatOfHalves},
                              {Figure::seat, &kSeat},
                              {Figure::edge, &kEdge},
                              {Figure::edges, &kFit, Asked::as_designed, &Limits::loosest_fit}};
constexpr Measure kMoved[] = {kEdgesUnpressed, kEndStillFree, kShouldersShut[0], kShouldersShut[1]};

/// What the entering lap takes up of the receiver, with the play around it.
Box recess(const Box& receiver, const Box& enterer, const LapDesign& lap) {
  return {{Length(), std::max(receiver.low[kAcross], enterer.low[kAcross] - lap.edge_clearance),
           receiver.low[kThrough] + lap.from_face},
          {std::min(receiver.high[kIn], lap.reach + lap.end_clearance),
           std::min(receiver.high[kAcross], enterer.high[kAcross] + lap.edge_clearance),
           receiver.high[kThrough]}};
}

/// The front of the entering piece's end, as far as its shoulder.
Box front_of_end(Box enterer, const LapDesign& lap, Length set_back) {
  enterer.low[kIn] = enterer.high[kIn] - lap.reach + set_back;
  enterer.high[kThrough] = enterer.low[kThrough] + lap.from_face;
  return enterer;
}

}  // namespace

const Measures kLapMeasures{kBuilt, kMoved, {}, true};

void HalfLap::cut(Assembly& assembly, const End& at) const {
  const Junction& junction = at.junction;
  Piece& receiver = assembly.pieces[junction.receives];
  Piece& enterer = assembly.pieces[junction.enters];
  const Box whole = junction.blank(receiver);
  const Box beside = junction.blank(enterer);
  const Box cut = recess(whole, beside, lap_);
  const Box own = junction.own(cut, receiver.place);
  // Only in front: behind the laps lie over each other.
  if (front_.set_back > Length())
    mitre_moulding(assembly, junction, front_.set_back, front_.mitred,
                   Strip{beside.low[kThrough], beside.low[kThrough] + lap_.from_face});
  const std::size_t number = assembly.joints.size();
  Joint joint = junction.joint(JointKind::half_lap, kLapMeasures);
  joint.design.bearing = Length();
  const bool at_end =
      beside.low[kAcross] <= whole.low[kAcross] || beside.high[kAcross] >= whole.high[kAcross];
  (at_end ? joint.design.edge : joint.design.edges) = lap_.edge_clearance * (at_end ? 1 : 2);
  const bool right_across = lap_.reach >= whole.extent(kIn);
  if (!right_across) joint.design.bottom = lap_.end_clearance;
  const Length width = beside.extent(kAcross);
  const Length thickness = beside.extent(kThrough) - lap_.from_face;
  joint.tenon = TenonSizes{
      thickness, width, lap_.reach - front_.set_back, lap_.from_face, {{Length(), width}}, {},
      {},        {}};
  joint.tenon->set_back = front_.set_back;
  joint.mortise = MortiseSizes{cut.extent(kThrough),
                               cut.extent(kIn),
                               lap_.from_face,
                               {},
                               {{own.low[0], cut.extent(kAcross)}}};
  joint.mortise->through = right_across;
  receiver.features.push_back({FeatureKind::lap,
                               {number},
                               {own},
                               {{SizeName::width, cut.extent(kAcross)},
                                {SizeName::depth, cut.extent(kThrough)},
                                {SizeName::from_face, lap_.from_face}}});
  const Box end = front_of_end(beside, lap_, front_.set_back);
  enterer.features.push_back(
      {FeatureKind::lap,
       {number},
       {junction.own(end, enterer.place)},
       {{SizeName::width, end.extent(kIn)}, {SizeName::depth, end.extent(kThrough)}}});
  assembly.joints.push_back(std::move(joint));
}

}  // namespace haunch
