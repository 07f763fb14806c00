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

/// The entering blank on one side of the receiver's sight edge.
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

/// The boxes in groups that touch along an axis: of a divided tenon each tenon by itself, lowest
/// first.
std::vector<std::vector<Box>> groups_along(std::vector<Box> boxes, std::size_t axis) {
  std::sort(boxes.begin(), boxes.end(),
            [axis](const Box& a, const Box& b) { return a.low[axis] < b.low[axis]; });
  std::vector<std::vector<Box>> groups;
  Length high;
  for (const Box& box : boxes) {
    if (groups.empty() || box.low[axis] > high) {
      groups.emplace_back();
      high = box.high[axis];
    }
    groups.back().push_back(box);
    high = std::max(high, box.high[axis]);
  }
  return groups;
}

Length extent_of(const std::vector<Box>& boxes, std::size_t axis) {
  Length low = boxes.front().low[axis];
  Length high = boxes.front().high[axis];
  for (const Box& box : boxes) {
    low = std::min(low, box.low[axis]);
    high = std::max(high, box.high[axis]);
  }
  return high - low;
}

/// The lesser of two figures; none where either is missing.
std::optional<Length> lesser(std::optional<Length> a, std::optional<Length> b) {
  return a && b ? std::optional(std::min(*a, *b)) : std::nullopt;
}

/// What is measured at the entering end, tenon by tenon; the least counts.
void measure_ends(JointMeasure& found, const std::vector<Box>& ends, const Solid& receives,
                  const JointAxes& axes) {
  for (const std::vector<Box>& tenon : groups_along(ends, axes.across)) {
    const auto cheeks = both_sides(tenon, receives.wood, axes.cheek);
    const auto edges = both_sides(tenon, receives.wood, axes.across);
    const auto bottom = gap(tenon, receives.wood, axes.in);
    const Length thickness = extent_of(tenon, axes.cheek);
    const bool first = found.widths.empty();
    found.cheeks = first ? cheeks : lesser(found.cheeks, cheeks);
    found.edges = first ? edges : lesser(found.edges, edges);
    found.bottom = first ? bottom : lesser(found.bottom, bottom);
    found.thickness = first ? thickness : std::min(found.thickness, thickness);
    found.widths.push_back(extent_of(tenon, axes.across));
  }
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
  found.haunch = gap(shallower, receives.wood, in);
  measure_ends(found, ends, receives, axes);
  return found;
}

}  // namespace haunch
