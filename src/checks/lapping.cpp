// Leaves that lie over what is beside their opening, as a whole or with a lip.
#include <array>

#include "family.h"

namespace haunch {
namespace {

constexpr std::array<Rule, 4> kLaps{{{"lap-left", "of leaf over its opening, left", kGapShows},
                                     {"lap-right", "of leaf over its opening, right", kGapShows},
                                     {"lap-head", "of leaf over its opening, head", kGapShows},
                                     {"lap-foot", "of leaf over its opening, foot", kGapShows}}};

std::array<Length, 4> in_turn(const Sides& sides) {
  return {sides.left, sides.right, sides.head, sides.foot};
}

/// How far the whole leaf reaches over the edges of its opening.
Sides reach_over(const std::vector<Solid>& solids, const Fit& fit) {
  const Box all = bounds_of_wood(solids);
  const Box opening = opening_of(fit);
  return {opening.low[0] - all.low[0], all.high[0] - opening.high[0], all.high[1] - opening.high[1],
          opening.low[1] - all.low[1]};
}

}  // namespace

Box opening_of(const Fit& fit) {
  const bool inset = fit.meets == Meets::inset;
  Box box;
  box.low[0] = inset ? -fit.room.left : fit.lap.left;
  box.low[1] = inset ? -fit.room.foot : fit.lap.foot;
  box.high[0] = box.low[0] + fit.width;
  box.high[1] = box.low[1] + fit.height;
  return box;
}

Box room_in_opening(const std::vector<Solid>& solids, const Fit& fit) {
  if (fit.meets != Meets::rebate) return bounds_of_wood(solids);
  std::vector<Solid> behind_lip;
  for (const Solid& solid : solids) {
    Box region = solid.blank;
    region.low[2] += floor_half(region.extent(2) + fit.lip);
    behind_lip.push_back({solid.blank, clipped(solid.wood, region)});
  }
  return bounds_of_wood(behind_lip);
}

void check_laps(Bench& bench, const Assembly& built) {
  const Fit* fit = fit_in_opening(built);
  if (fit == nullptr || fit->meets == Meets::inset) return;
  const std::array<Length, 4> found = in_turn(reach_over(bench.solids, *fit));
  const std::array<Length, 4> design = in_turn(fit->lap);
  for (std::size_t side = 0; side < kLaps.size(); ++side) {
    if (design[side] <= Length()) continue;
    const Bounds as_built{design[side], design[side], bench.limits.least_over, {}};
    const Bounds moved{Length(), {}, bench.limits.least_over, {}};
    report(bench, kLaps[side], {}, {}, found[side], bench.moisture ? moved : as_built);
  }
}

std::vector<const Rule*> rules_of_laps() {
  return {&kLaps[0], &kLaps[1], &kLaps[2], &kLaps[3]};
}

}  // namespace haunch
