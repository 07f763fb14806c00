// Fits: every clearance of every joint, measured in the wood, against its design and the trade's
// limits.
#include <algorithm>
#include <cstdlib>

#include "family.h"
#include "joint_rules.h"

namespace haunch {
namespace {

/// A figure of a joint as it was measured and as it was designed.
struct Figures {
  std::optional<Length> found, design;
};

/// How far a panel can go in before anything but its edge meets the piece that it stands in.
std::optional<Length> free_of_slope(const JointMeasure& found) {
  if (!found.seat || !found.haunch) return found.seat ? found.seat : found.haunch;
  return std::min(*found.seat, *found.haunch);
}

/// Shoulders are always designed to close.
Figures figures_of(const Clearances& design, const JointMeasure& found, Figure figure) {
  switch (figure) {
    case Figure::bite:
      return {found.reach, design.bite};
    case Figure::cheeks:
      return {found.cheeks, design.cheeks};
    case Figure::edges:
      return {found.edges, design.edges};
    case Figure::edge:
      return {found.edge, design.edge};
    case Figure::bearing:
      return {found.bearing, design.bearing};
    case Figure::bottom:
      return {found.bottom, design.bottom};
    case Figure::seat:
      return {found.seat, Length()};
    case Figure::long_seat:
      return {found.long_seat, Length()};
    case Figure::haunch:
      return {found.haunch, Length()};
    case Figure::slope:
      break;
  }
  return {free_of_slope(found), found.bottom};
}

bool slopes(const Bench& bench, std::size_t piece) {
  return !bench.solids[piece].wood.sloping.empty();
}

bool is_play(Figure figure) {
  return figure == Figure::cheeks || figure == Figure::edges || figure == Figure::edge;
}

/// Where something slopes, measures are to the nearest step, and play, which is of more than one
/// slope, a few off. What lies so near to its design is as designed.
void settle_near_design(Figures& figures) {
  constexpr std::int64_t kRounding = 10;
  if (figures.found && std::abs((*figures.found - *figures.design).steps()) <= kRounding)
    figures.found = figures.design;
}

/// What lies within a few steps of zero is zero: moved wood is rounded to the step, piece by piece.
void settle_near_zero(Figures& figures) {
  constexpr std::int64_t kRounding = 100;
  if (figures.found && std::abs(figures.found->steps()) <= kRounding) figures.found = Length();
}

/// Whether a joint has what a row is of.
bool has(const Bench& bench, const Joint& joint, Figure figure, const Figures& figures) {
  switch (figure) {
    case Figure::long_seat:
      return figures.found.has_value();
    case Figure::haunch:
      return !joint.tenon->haunches.empty();
    case Figure::slope:
      return slopes(bench, joint.enters) && figures.found && figures.design;
    default:
      return figures.design.has_value();
  }
}

Bounds bounds_of(const Bench& bench, const Measure& row, const Figures& figures) {
  const Length none;
  std::optional<Length> limit;
  if (row.limit != nullptr) limit = bench.limits.*row.limit;
  switch (row.asked) {
    case Asked::as_designed:
      return {figures.design, figures.design, {}, limit};
    case Asked::at_least:
      return {limit.value_or(none), {}, {}, {}};
    case Asked::unpressed:
      return {{}, {}, none, {}};
    case Asked::shut:
      return {{}, {}, -*limit, *limit};
    case Asked::past_bottom:
      break;
  }
  return {figures.design, {}, {}, {}};
}

/// Tells the figures of one joint, row by row. Of a panel whose edge is out of its groove, or has
/// swollen past its bottom, nothing more can be said.
void check_joint(Bench& bench, std::size_t number) {
  const Joint& joint = bench.assembly.joints[number];
  const bool moved = bench.moisture.has_value();
  for (const Measure& row : moved ? joint.measures.moved : joint.measures.built) {
    Figures figures = figures_of(joint.design, bench.measures[number], row.figure);
    if (!has(bench, joint, row.figure, figures)) continue;
    if (moved && row.figure != Figure::bite)
      settle_near_zero(figures);
    else if (row.asked == Asked::as_designed && is_play(row.figure) &&
             (slopes(bench, joint.receives) || slopes(bench, joint.enters)))
      settle_near_design(figures);
    Bounds bounds = bounds_of(bench, row, figures);
    // Along an arch room is measured upright: least, and as designed, where the curve is level;
    // half of an arch may be so nowhere.
    if (joint.arched && row.figure == Figure::bottom) bounds.fail_max.reset();
    report(bench, *row.rule, {joint.receives, joint.enters}, number, figures.found, bounds);
    if (row.figure == Figure::bite && *figures.found <= Length()) return;
    if (joint.design.bite && moved && figures.found && *figures.found < Length()) return;
  }
}

}  // namespace

void check_fits(Bench& bench) {
  for (std::size_t number = 0; number < bench.assembly.joints.size(); ++number)
    check_joint(bench, number);
}

std::vector<const Rule*> rules_of_fits() {
  return rules_of_joints();
}

}  // namespace haunch
