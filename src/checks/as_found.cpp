// What stands in an opening that was measured all round: that it goes in, and how wide its gaps
// come out.
#include <algorithm>
#include <utility>

#include "family.h"
#include "rounding.h"

namespace haunch {
namespace {

constexpr Rule kGoesIn{"found-room",
                       "more than the gap that was designed, at the tightest place where the "
                       "opening was measured",
                       "what is larger than the opening as it was found does not go in"};
constexpr Rule kLeafGap{"found-gap",
                        "more than the gap that was designed, at the widest place where the "
                        "opening was measured",
                        "a gap over 3 mm (1/8 in) wider than the others shows; \"follow\" has the "
                        "leaf planed to its opening, or true the opening up (trade practice)"};
constexpr Rule kWallGap{"found-packing",
                        "more than the gap that was designed, at the widest place where the wall's "
                        "opening was measured",
                        "over 10 mm (3/8 in) of packing more than usual, a casing may not reach "
                        "over the gap: scribe it or make it up (trade practice)"};

/// A side of what stands in an opening: across which axis, at the high end of it or the low one.
struct FoundSide {
  std::size_t across;
  bool high;
  const std::array<Length, 3>& places;  // from the head or the left, how far the opening is beyond
  bool from_high;                       // the first place is at the high end of the side
};

/// Play where something slopes is off by less.
constexpr Length kSlopes = Length::from_steps(10);

/// A slice as thick as a step across a side, so near to its end that what is planed off the next
/// side does not count, and as deep as half of the whole.
struct Slice {
  Box box;
  Length place;  // from the low end of the side
};

Slice slice_at(const Bench& bench, const FoundSide& side, std::size_t number) {
  constexpr Length kFromEnd = Length::from_mm(12);
  const Triple& size = bench.assembly.size;
  const std::size_t along = 1 - side.across;
  const bool at_high = number != 1 && (number == 0) == side.from_high;
  Slice slice;
  slice.place = number == 1 ? floor_half(size[along]) : at_high ? size[along] - kFromEnd : kFromEnd;
  const Length far = size[0] + size[1];
  slice.box = {{-far, -far, -size[2]}, {far, far, size[2] * 2}};
  slice.box.low[along] = slice.place;
  slice.box.high[along] = slice.place + Length::from_steps(1);
  (side.high ? slice.box.low : slice.box.high)[side.across] = floor_half(size[side.across]);
  return slice;
}

/// How far the opening is beyond the square one at a place along a side: straight between where it
/// was measured.
Length found_at(const FoundSide& side, Length place, Length length) {
  const auto ordered = [&](std::size_t i) { return side.places[side.from_high ? 2 - i : i]; };
  const double half = static_cast<double>(length.steps()) / 2;
  const double at = static_cast<double>(place.steps()) / half;  // 0 to 2
  const std::size_t before = at < 1 ? 0 : 1;
  const Length rise = ordered(before + 1) - ordered(before);
  return ordered(before) +
         nearest_step(static_cast<double>(rise.steps()) * (at - static_cast<double>(before)));
}

/// From the wood that stands there to the opening, less what was designed; nothing where no wood
/// is.
std::optional<Length> more_than_designed(const Bench& bench, const FoundSide& side,
                                         std::size_t number) {
  const Slice slice = slice_at(bench, side, number);
  const Length size = bench.assembly.size[side.across];
  std::optional<Length> outmost;
  for (const Solid& solid : bench.solids)
    for (const Box& wood : bounds_of(clipped(solid.wood, slice.box))) {
      const Length reach = side.high ? size - wood.high[side.across] : wood.low[side.across];
      if (!outmost || reach < *outmost) outmost = reach;
    }
  if (!outmost) return {};
  const Length gap = *outmost + found_at(side, slice.place, bench.assembly.size[1 - side.across]);
  return std::max(gap, -gap) <= kSlopes ? Length() : gap;
}

}  // namespace

void check_as_found(Bench& bench) {
  const Fit* fit = fit_in_opening(bench.assembly);
  if (fit == nullptr || !fit->found) return;
  const AsFound& found = *fit->found;
  const bool wall = fit->stands == StandsIn::wall;
  std::optional<Length> least, most;
  for (const FoundSide& side :
       {FoundSide{0, false, found.left, true}, FoundSide{0, true, found.right, true},
        FoundSide{1, true, found.head, false}, FoundSide{1, false, found.foot, false}})
    for (std::size_t number = 0; number < 3; ++number) {
      if (wall && side.across == 1 && number == 1) continue;  // between the jambs
      const auto more = more_than_designed(bench, side, number);
      if (!more) continue;
      least = std::min(least.value_or(*more), *more);
      most = std::max(most.value_or(*more), *more);
    }
  report(bench, kGoesIn, {}, {}, least, Bounds{Length(), {}, {}, {}});
  report(bench, wall ? kWallGap : kLeafGap, {}, {}, most,
         Bounds{{}, {}, {}, wall ? bench.limits.most_packing : bench.limits.most_found_gap});
}

std::vector<const Rule*> rules_of_as_found() {
  return {&kGoesIn, &kLeafGap, &kWallGap};
}

}  // namespace haunch
