#include "joint_measure.h"

#include <algorithm>
#include <utility>

namespace haunch {
namespace {

/// The joint's own three axes in the assembly.
struct JointAxes {
  Way in;              // the way the entering piece goes
  std::size_t across;  // along the tenon's width
  std::size_t cheek;   // along its thickness
};

JointAxes axes_of(const Joint& joint, const Piece& entering) {
  const auto in = static_cast<std::size_t>(joint.heading.axis);
  const auto cheek = static_cast<std::size_t>(entering.place.axes[2]);
  return {{in, joint.heading.upwards}, 3 - in - cheek, cheek};
}

/// The half of space, cut down to the two blanks' height and depth, on one side of the receiver's
/// sight edge.
Box beyond_sight_edge(const Solid& receives, const Solid& enters, Way in, bool inside) {
  Box region = enters.blank;
  const Length edge = in.upwards ? receives.blank.low[in.axis] : receives.blank.high[in.axis];
  if (in.upwards == inside)
    region.low[in.axis] = edge;
  else
    region.high[in.axis] = edge;
  return region;
}

Length reach_of(const Box& box, const Solid& receives, Way in) {
  return in.upwards ? box.high[in.axis] - receives.blank.low[in.axis]
                    : receives.blank.high[in.axis] - box.low[in.axis];
}

/// A slice one step thick off the far end of a box.
Box end_slice(Box box, Way in) {
  const Length step = Length::from_steps(1);
  if (in.upwards)
    box.low[in.axis] = box.high[in.axis] - step;
  else
    box.high[in.axis] = box.low[in.axis] + step;
  return box;
}

std::optional<Length> both_sides(const std::vector<Box>& from, const std::vector<Box>& to,
                                 std::size_t axis) {
  const auto low = gap(from, to, {axis, false});
  const auto high = gap(from, to, {axis, true});
  if (!low || !high) return {};
  return *low + *high;
}

/// The lengths of the runs that the boxes make along an axis, touching ones being one run.
std::vector<Length> runs_along(std::vector<Box> boxes, std::size_t axis) {
  std::sort(boxes.begin(), boxes.end(),
            [axis](const Box& a, const Box& b) { return a.low[axis] < b.low[axis]; });
  std::vector<Length> runs;
  for (std::size_t i = 0; i < boxes.size();) {
    const Length low = boxes[i].low[axis];
    Length high = boxes[i].high[axis];
    for (; i < boxes.size() && boxes[i].low[axis] <= high; ++i)
      high = std::max(high, boxes[i].high[axis]);
    runs.push_back(high - low);
  }
  return runs;
}

}  // namespace

JointMeasure measure(const Joint& joint, const Piece& entering, const Solid& receives,
                     const Solid& enters) {
  const JointAxes axes = axes_of(joint, entering);
  const Way in = axes.in;
  JointMeasure found;
  if (enters.wood.empty()) return found;
  found.reach = reach_of(enters.wood.front(), receives, in);
  for (const Box& box : enters.wood)
    found.reach = std::max(found.reach, reach_of(box, receives, in));
  const std::vector<Box> inside =
      clipped(enters.wood, beyond_sight_edge(receives, enters, in, true));
  const std::vector<Box> outside =
      clipped(enters.wood, beyond_sight_edge(receives, enters, in, false));
  found.seat = gap(outside, receives.wood, in);
  if (inside.empty()) return found;
  std::vector<Box> ends;
  std::vector<Box> shallower;
  for (const Box& box : inside) {
    const bool at_end = reach_of(box, receives, in) == found.reach;
    (at_end ? ends : shallower).push_back(at_end ? end_slice(box, in) : box);
  }
  found.cheeks = both_sides(ends, receives.wood, axes.cheek);
  found.edges = both_sides(ends, receives.wood, axes.across);
  found.bottom = gap(ends, receives.wood, in);
  found.haunch = gap(shallower, receives.wood, in);
  found.thickness = runs_along(ends, axes.cheek).front();
  found.widths = runs_along(ends, axes.across);
  return found;
}

}  // namespace haunch
