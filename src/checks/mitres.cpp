// How far mitres open through the seasons: the ends of members that have become wider or narrower,
// but no longer, no longer stand at 45 degrees.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "family.h"
#include "polyhedron.h"
#include "rounding.h"

namespace haunch {
namespace {

constexpr Rule kOpens{
    "mitre-open", "by which the mitre opens at its sight corner or its outer one",
    "wood shrinks across its grain and not along it, so that a mitre opens at the sight corner as "
    "it dries and at the outer one as it swells (Noyes, Handwork in Wood); past 0.8 mm (1/32 in) "
    "it is seen (gap of the Custom grade, ANSI/AWI 0620-2024): narrower members, quarter-sawn "
    "ones, or a build nearer to the moisture that it will have"};

struct Line {
  Corner sight, outer;
};

double steps(Length length) {
  return static_cast<double>(length.steps());
}

double distance(const Corner& a, const Corner& b) {
  return std::hypot(steps(a.u - b.u), steps(a.v - b.v));
}

/// The mitre on a piece, seen from the face: of the wood that was cut off, a triangle, the longest
/// side. Its sight corner lies nearer to the middle of the other piece's length.
Line mitre_of(const Piece& piece, std::size_t joint, const Corner& towards) {
  for (const Feature& feature : piece.features) {
    if (feature.kind != FeatureKind::mitre || feature.joints != std::vector{joint}) continue;
    const std::vector<Corner> corners = placed(feature.prisms.front(), piece.place).outline;
    Line longest{corners[0], corners[1]};
    for (std::size_t i = 1; i < corners.size(); ++i) {
      const Corner& next = corners[(i + 1) % corners.size()];
      if (distance(corners[i], next) > distance(longest.sight, longest.outer))
        longest = {corners[i], next};
    }
    if (distance(longest.outer, towards) < distance(longest.sight, towards))
      std::swap(longest.sight, longest.outer);
    return longest;
  }
  return {};
}

double angle_of(const Line& line) {
  return std::atan2(steps(line.outer.v - line.sight.v), steps(line.outer.u - line.sight.u));
}

Corner middle_of(const Assembly& wood, std::size_t group) {
  const Box all = placed_blanks(wood, group);
  return {floor_half(all.low[0] + all.high[0]), floor_half(all.low[1] + all.high[1])};
}

}  // namespace

MitreState mitre_state(const Assembly& wood, std::size_t number) {
  const Joint& joint = wood.joints[number];
  const Corner towards = middle_of(wood, wood.pieces[joint.receives].group);
  const Line stile = mitre_of(wood.pieces[joint.receives], number, towards);
  const Line rail = mitre_of(wood.pieces[joint.enters], number, towards);
  const double apart = std::abs(angle_of(stile) - angle_of(rail)) * 180 / std::numbers::pi;
  return {nearest_step(distance(stile.sight, rail.sight)),
          nearest_step(distance(stile.outer, rail.outer)), apart};
}

void check_moved_mitres(Bench& bench) {
  for (std::size_t number = 0; number < bench.assembly.joints.size(); ++number) {
    const Joint& joint = bench.assembly.joints[number];
    if (joint.kind != JointKind::mitre) continue;
    const MitreState state = mitre_state(bench.assembly, number);
    report(bench, kOpens, {joint.receives, joint.enters}, number,
           std::max(state.at_sight, state.at_outer), {{}, {}, {}, bench.limits.shut_shoulder});
  }
}

std::vector<const Rule*> rules_of_mitres() {
  return {&kOpens};
}

}  // namespace haunch
