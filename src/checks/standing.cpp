// Whether a case can be stood up in its room, and how firmly it stands there.
#include <cmath>

#include "family.h"
#include "kind.h"
#include "rounding.h"
#include "weight.h"

namespace haunch {
namespace {

constexpr Rule kStandUp{"stand-up", "under the ceiling as it is stood up",
                        "lying on its back it is tipped up over its diagonal of height and depth"};
constexpr Rule kTipping{
    "tipping-margin", "from its front feet back to where its weight hangs, all fronts open",
    "what weighs before its feet tips it; this is a first check without a child's weight on it and "
    "no test to a standard (ASTM F2057, EN 14749): fix to the wall what can be climbed"};

double steps_of(Length length) {
  return static_cast<double>(length.steps());
}

void check_stand_up(Bench& bench) {
  if (!bench.assembly.ceiling) return;
  const Box all = bounds_of_wood(bench.solids);
  const Length diagonal =
      nearest_step(std::hypot(steps_of(all.extent(1)), steps_of(all.extent(2))));
  report(bench, kStandUp, {}, {}, *bench.assembly.ceiling - diagonal, Bounds{Length(), {}, {}, {}});
}

/// The foremost wood that stands on the floor.
std::optional<Length> front_feet(const Bench& bench) {
  std::optional<Length> foremost;
  for (const Solid& solid : bench.solids)
    for (const Box& box : bounds_of(solid.wood))
      if (box.low[1] == Length() && (!foremost || box.low[2] < *foremost)) foremost = box.low[2];
  return foremost;
}

/// How far forward the middle of a piece comes when all is opened: with a drawer so far as it goes,
/// of a door at a right angle about half of its width before its pin.
double forward(const Bench& bench, std::size_t piece) {
  const std::size_t group = bench.assembly.pieces[piece].group;
  const Box& blank = bench.solids[piece].blank;
  for (const Fit& fit : bench.assembly.fits) {
    if (fit.stands != StandsIn::front || !is_within(bench.assembly, group, fit.group)) continue;
    if (const auto* slide = std::get_if<Slide>(&fit.moves)) return -steps_of(slide->by);
    if (const Swing* swing = fit.swing()) {
      const double middle = steps_of(blank.low[0] + blank.high[0]) / 2;
      const double deep = steps_of(blank.low[2] + blank.high[2]) / 2;
      return deep - (steps_of(swing->pin[2]) - std::abs(middle - steps_of(swing->pin[0])));
    }
  }
  return 0;
}

void check_tipping(Bench& bench, const Job& job) {
  const auto& fits = bench.assembly.fits;
  const bool opens = std::any_of(fits.begin(), fits.end(),
                                 [](const Fit& it) { return it.stands == StandsIn::front; });
  const auto feet = front_feet(bench);
  if (!opens || !feet) return;
  const Weights weights = weigh(bench.assembly, job);
  if (!weights.whole.is_known()) return;
  double mass = 0, moment = 0;
  for (std::size_t piece = 0; piece < bench.solids.size(); ++piece) {
    const Box& blank = bench.solids[piece].blank;
    const double its = *weights.pieces[piece] + bench.assembly.pieces[piece].load;
    mass += its;
    moment += its * (steps_of(blank.low[2] + blank.high[2]) / 2 - forward(bench, piece));
  }
  if (mass == 0) return;
  report(bench, kTipping, {}, {}, nearest_step(moment / mass) - *feet,
         Bounds{{}, {}, Length::from_steps(1), {}});
}

}  // namespace

void check_standing(Bench& bench, const Job* job) {
  check_stand_up(bench);
  if (job != nullptr) check_tipping(bench, *job);
}

std::vector<const Rule*> rules_of_standing() {
  return {&kStandUp, &kTipping};
}

}  // namespace haunch
