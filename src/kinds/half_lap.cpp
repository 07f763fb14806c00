#include "half_lap.h"

#include <algorithm>
#include <utility>

namespace haunch {
namespace {

/// What the entering lap takes up of the receiver, with the play around it, in the assembly.
Box recess(const Box& receiver, const Box& enterer, Heading heading, std::size_t across,
           const LapDesign& lap) {
  const auto in = static_cast<std::size_t>(heading.axis);
  const Length deep = lap.reach + lap.end_clearance;
  Box box = receiver;
  if (heading.upwards)
    box.high[in] = std::min(receiver.high[in], receiver.low[in] + deep);
  else
    box.low[in] = std::max(receiver.low[in], receiver.high[in] - deep);
  box.low[across] = std::max(receiver.low[across], enterer.low[across] - lap.edge_clearance);
  box.high[across] = std::min(receiver.high[across], enterer.high[across] + lap.edge_clearance);
  box.low[2] = receiver.low[2] + lap.from_face;
  return box;
}

/// The front of the entering piece's end, in its own axes.
Box front_of_end(const Piece& piece, bool high_end, const LapDesign& lap) {
  Box box{{}, {lap.reach, piece.blank[1], lap.from_face}};
  if (!high_end) return box;
  box.low[0] = piece.blank[0] - lap.reach;
  box.high[0] = piece.blank[0];
  return box;
}

}  // namespace

void join_by_half_lap(Assembly& assembly, std::size_t receives, std::size_t enters, Heading heading,
                      const LapDesign& lap) {
  Piece& receiver = assembly.pieces[receives];
  Piece& enterer = assembly.pieces[enters];
  const auto across = static_cast<std::size_t>(enterer.place.axes[1]);
  const Box whole = placed_blank(receiver);
  const Box beside = placed_blank(enterer);
  const Box cut = in_own_axes(recess(whole, beside, heading, across, lap), receiver.place);
  const std::size_t number = assembly.joints.size();
  Joint joint;
  joint.kind = "half-lap";
  joint.receives = receives;
  joint.enters = enters;
  joint.heading = heading;
  joint.design.bearing = Length();
  const bool at_end =
      beside.low[across] <= whole.low[across] || beside.high[across] >= whole.high[across];
  (at_end ? joint.design.edge : joint.design.edges) = lap.edge_clearance * (at_end ? 1 : 2);
  const auto in = static_cast<std::size_t>(heading.axis);
  const bool right_across = lap.reach >= whole.extent(in);
  if (!right_across) joint.design.bottom = lap.end_clearance;
  const Length thickness = enterer.blank[2] - lap.from_face;
  joint.tenon = TenonSizes{
      thickness, enterer.blank[1], lap.reach, lap.from_face, {{Length(), enterer.blank[1]}}, {}, {},
      {}};
  joint.mortise =
      MortiseSizes{cut.extent(2), cut.extent(1), lap.from_face, {}, {{cut.low[0], cut.extent(0)}}};
  joint.mortise->through = right_across;
  receiver.features.push_back(
      {"lap",
       {number},
       {cut},
       {{"width", cut.extent(0)}, {"depth", cut.extent(2)}, {"from_face", lap.from_face}}});
  const Box end = front_of_end(enterer, heading.upwards, lap);
  enterer.features.push_back(
      {"lap", {number}, {end}, {{"width", end.extent(0)}, {"depth", end.extent(2)}}});
  assembly.joints.push_back(std::move(joint));
}

}  // namespace haunch
