// Proportions: of tenons, as measured in the wood, and of the leaf.
#include <algorithm>

#include "family.h"

namespace haunch {
namespace {

constexpr Rule kDepth{"tenon-depth", "of tenon beyond its shoulder",
                      "a tenon wants to be at least 3 times as deep as it is thick "
                      "(woodworking-school rule, after Moxon)"};
constexpr Rule kThickness{"tenon-thickness", "of tenon thickness",
                          "a tenon wants to be from a quarter to half of the thickness; a third is "
                          "the rule (Fairham 1917, Noyes 1910)"};
constexpr Rule kTwinThickness{"twin-thickness", "of tenon thickness, of each side by side",
                              "the two together want to be from a quarter to half of the "
                              "thickness, each about a fifth (trade "
                              "practice)"};
constexpr Rule kWidth{"tenon-width", "of tenon width",
                      "under 3 mm of tenon there is none (trade practice)"};
constexpr Rule kTongue{"panel-tongue", "of panel edge thickness",
                       "an edge under 3 mm breaks out of its groove (trade practice)"};
constexpr Rule kGlued{
    "glued-width", "of tenon glued across the grain",
    "over 100 mm (4 in) in one tenon the wood moves more than the glue bears (shop rule)"};
constexpr Rule kLockRail{
    "lock-rail-height", "from the leaf's foot to the top of the lock rail",
    "a lock rail's top stands 3 ft 2 in above the floor (Building Construction, panelled doors)"};

void check_tenon(Bench& bench, std::size_t number) {
  const Joint& joint = bench.assembly.joints[number];
  const JointMeasure& found = bench.measures[number];
  if (found.widths.empty()) return;
  const Length least = bench.limits.least_wood;
  // A loose tenon is all tenon; what it is in goes by the piece that it holds.
  const Length thickness =
      bench.assembly.pieces[joint.has_shoulder ? joint.enters : joint.receives].blank[2];
  const std::vector<std::size_t> parts{joint.enters};
  const bool stub = !joint.mortise;
  const auto side_by_side = static_cast<std::int64_t>(found.side_by_side);
  report(bench, kDepth, parts, number, found.reach,
         Bounds{least, {}, stub ? std::nullopt : std::optional(found.thickness * 3), {}});
  report(bench, side_by_side > 1 ? kTwinThickness : kThickness, parts, number, found.thickness,
         stub ? Bounds{least, {}, {}, {}}
              : Bounds{least,
                       {},
                       floor_divide(thickness, 4 * side_by_side),
                       floor_divide(thickness, 2 * side_by_side)});
  const auto [narrowest, widest] = std::minmax_element(found.widths.begin(), found.widths.end());
  report(bench, kWidth, parts, number, *narrowest, Bounds{least, {}, {}, {}});
  report(bench, kGlued, parts, number, *widest, Bounds{{}, {}, {}, bench.limits.widest_glued});
}

/// The edge of a panel, once a panel.
void check_tongue(Bench& bench, std::size_t number) {
  const Joint& joint = bench.assembly.joints[number];
  const JointMeasure& found = bench.measures[number];
  const bool told = number > 0 && bench.assembly.joints[number - 1].enters == joint.enters;
  if (told || found.widths.empty()) return;
  report(bench, kTongue, {joint.enters}, {}, found.thickness,
         Bounds{{}, {}, bench.limits.least_wood, {}});
}

/// Whether a rail goes by the name of lock rail, however it is written.
bool is_lock_rail(const Piece& piece) {
  std::string name = piece.name;
  std::transform(name.begin(), name.end(), name.begin(), [](char c) {
    return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  });
  const std::size_t at = name.find("lock rail");
  const bool whole_word = at == 0 || (at != std::string::npos && name[at - 1] == ' ');
  return piece.role == "rail" && whole_word;
}

/// The foot of the leaf that a piece is of.
Length foot_below(const Bench& bench, std::size_t piece) {
  const auto number = leaf_of(bench.assembly, piece);
  if (!number) return {};
  const Hanging& hung = bench.assembly.hung[*number];
  return placed_blanks(bench.assembly, hung.first, hung.count).low[1];
}

}  // namespace

void check_proportions(Bench& bench) {
  for (std::size_t number = 0; number < bench.assembly.joints.size(); ++number) {
    const Joint& joint = bench.assembly.joints[number];
    if (joint.tenon) check_tenon(bench, number);
    if (joint.design.bite) check_tongue(bench, number);
  }
  for (std::size_t number = 0; number < bench.assembly.pieces.size(); ++number)
    if (is_lock_rail(bench.assembly.pieces[number]))
      report(bench, kLockRail, {number}, {},
             bench.solids[number].blank.high[1] - foot_below(bench, number),
             Bounds{{}, {}, {}, bench.limits.highest_lock_rail});
}

std::vector<const Rule*> rules_of_proportions() {
  return {&kDepth, &kThickness, &kTwinThickness, &kWidth, &kGlued, &kTongue, &kLockRail};
}

}  // namespace haunch
