// Dovetails: how wide their tails and pins are, how they slope, and what a groove that comes out
// beside them and the lap before them leave. All as it is found in the wood of the end.
#include <algorithm>

#include "family.h"

namespace haunch {
namespace {

constexpr Rule kHalfPin{"half-pin", "of half pin beside an outer tail, where it is narrowest",
                        "the narrowest part of a half pin wants to be 1/4 in (6 mm) or more (trade "
                        "article); under 3 mm it splits off"};
constexpr Rule kPin{"pin-width", "of pin between two tails, where it is narrowest",
                    "under 3 mm, 1/8 in, a pin is hardly to be sawn, and breaks (trade practice)"};
constexpr Rule kTail{"tail-width", "of tail, where it is widest",
                     "tails up to 4 times as wide as the pins, and at most 1 3/4 in, hold well "
                     "(Noyes 1910, Griffith 1908)"};
constexpr Rule kSlope{"tail-slope", "that a tail goes out at each side over its length",
                      "1 in 8 is best (Fairham 1917); router cutters go to 1 in 4 (trade article): "
                      "a flatter tail draws out, a steeper one breaks at its corners"};
constexpr Rule kGroove{"groove-in-tail", "of tail beside the groove that comes out in it",
                       "a groove must fall wholly in a tail, or it is seen at the corner (Noyes "
                       "1910, Griffith 1908)",
                       false, "that the groove comes out beside a tail"};
constexpr Rule kLap{"dovetail-lap", "of lap before the tails",
                    "3/32 to 1/4 in are left before lapped tails (magazine, Fairham 1917); with "
                    "less it breaks through"};

constexpr Rule kFlush{"pins-flush", "that the pins' ends stand past the faces of the tails",
                      "through dovetails and fingers end flush, less what is planed off: past a "
                      "drawer's side they catch in its opening",
                      false, "that the pins' ends stay behind the faces of the tails"};

/// A stretch across the end.
struct Span {
  Length low, high;

  Length width() const { return high - low; }
};

/// A corner as its wood is found, across the end.
class TailedEnd {
 public:
  TailedEnd(const Bench& bench, std::size_t number)
      : bench_(bench),
        joint_(bench.assembly.joints[number]),
        in_(static_cast<std::size_t>(joint_.heading.axis)),
        across_(3 - in_ - static_cast<std::size_t>(joint_.through)),
        reach_(bench.measures[number].reach) {
    const Box& receives = bench.solids[joint_.receives].blank;
    const Box& enters = bench.solids[joint_.enters].blank;
    edges_ = {std::max(receives.low[across_], enters.low[across_]),
              std::min(receives.high[across_], enters.high[across_])};
    ends = spans_at(reach_);
    roots = spans_at(Length::from_steps(1));
  }

  std::vector<Span> ends, roots;  // of its tails, lowest first

  bool is_whole() const { return !ends.empty() && ends.size() == roots.size(); }

  Length half_pin() const {
    return std::min(ends.front().low - edges_.low, edges_.high - ends.back().high);
  }
  std::optional<Length> pin() const {
    std::optional<Length> least;
    for (std::size_t i = 1; i < ends.size(); ++i) {
      const Length pin = ends[i].low - ends[i - 1].high;
      least = least ? std::min(*least, pin) : pin;
    }
    return least;
  }
  Length widest_tail() const {
    Length widest;
    for (const Span& tail : ends)
      widest = std::max(widest, tail.width());
    return widest;
  }
  /// Found at one side of a tail; they are alike.
  Length goes_out() const { return roots.front().low - ends.front().low; }
  Length reach() const { return reach_; }

  /// What is left of the receiver beyond the tails.
  Length lap() const { return bench_.solids[joint_.receives].blank.extent(in_) - reach_; }

  /// The least wood between a groove that comes out at the corner and the sides of the tail that it
  /// comes out in, or by how much it misses them all; nothing where none comes out.
  std::optional<Length> beside_groove() const {
    std::optional<Length> least;
    for (const std::size_t number : {joint_.receives, joint_.enters})
      for (const Feature& feature : bench_.assembly.pieces[number].features)
        if (feature.kind == FeatureKind::groove)
          for (const Box& cut : feature.cuts)
            if (const auto wood = beside(placed(cut, bench_.assembly.pieces[number].place)))
              least = least ? std::min(*least, *wood) : wood;
    return least;
  }

 private:
  /// One step thick, so far in.
  Box slab_at(Length depth) const {
    Box slab = bench_.solids[joint_.enters].blank;
    const Length edge = sight_edge(bench_.assembly, joint_);
    const Length step = Length::from_steps(1);
    slab.low[in_] = joint_.heading.upwards ? edge + depth - step : edge - depth;
    slab.high[in_] = slab.low[in_] + step;
    slab.low[across_] = edges_.low;
    slab.high[across_] = edges_.high;
    return slab;
  }

  std::vector<Span> spans_at(Length depth) const {
    std::vector<Box> bounds = bounds_of(clipped(bench_.solids[joint_.enters].wood, slab_at(depth)));
    std::sort(bounds.begin(), bounds.end(),
              [this](const Box& a, const Box& b) { return a.low[across_] < b.low[across_]; });
    std::vector<Span> spans;
    for (const Box& box : bounds) {
      if (spans.empty() || box.low[across_] > spans.back().high)
        spans.push_back({box.low[across_], box.high[across_]});
      else
        spans.back().high = std::max(spans.back().high, box.high[across_]);
    }
    return spans;
  }

  /// Of one groove, if it comes out here.
  std::optional<Length> beside(const Box& groove) const {
    // A bottom's play reaches a little past the edge of what stands on it.
    const Length middle = floor_half(groove.low[across_] + groove.high[across_]);
    if (middle < edges_.low || middle > edges_.high) return {};
    if (!interiors_meet(groove, slab_at(Length::from_steps(1)))) return {};
    std::optional<Length> most;
    for (const Span& tail : roots) {
      const Length wood =
          std::min(groove.low[across_] - tail.low, tail.high - groove.high[across_]);
      most = most ? std::max(*most, wood) : wood;
    }
    return most;
  }

  const Bench& bench_;
  const Joint& joint_;
  std::size_t in_, across_;
  Length reach_;
  Span edges_{};
};

void check_corner(Bench& bench, std::size_t number) {
  const Joint& joint = bench.assembly.joints[number];
  const TailedEnd corner(bench, number);
  const Limits& limits = bench.limits;
  if (!corner.is_whole()) return report(bench, kTail, {joint.enters}, number, {}, {});
  report(bench, kHalfPin, {joint.receives}, number, corner.half_pin(),
         Bounds{limits.least_wood, {}, limits.least_half_pin, {}});
  if (const auto pin = corner.pin())
    report(bench, kPin, {joint.receives}, number, pin,
           Bounds{Length::from_steps(1), {}, limits.least_pin, {}});
  report(bench, kTail, {joint.enters}, number, corner.widest_tail(),
         Bounds{{}, {}, {}, limits.widest_tail});
  report(bench, kSlope, {joint.enters}, number, corner.goes_out(),
         Bounds{Length::from_steps(1),
                {},
                floor_divide(corner.reach(), 10),
                floor_divide(corner.reach(), 4)});
  if (const auto wood = corner.beside_groove())
    report(bench, kGroove, {joint.enters}, number, wood, Bounds{Length(), {}, {}, {}});
  if (corner.lap() > Length())
    report(bench, kLap, {joint.receives}, number, corner.lap(),
           Bounds{limits.thinnest_lap, {}, limits.thin_lap, {}});
}

/// Where tails or fingers go right through: whether the other piece is as long as they are apart.
void check_flush(Bench& bench, std::size_t number) {
  const Joint& joint = bench.assembly.joints[number];
  const auto in = static_cast<std::size_t>(joint.heading.axis);
  const auto along = static_cast<std::size_t>(joint.through);
  const Box& pins = bench.solids[joint.receives].blank;
  const Box& tails = bench.solids[joint.enters].blank;
  if (bench.measures[number].reach != pins.extent(in)) return;
  const bool low = tails.low[along] - pins.low[along] < pins.high[along] - tails.high[along];
  report(bench, kFlush, {joint.receives}, number,
         low ? tails.low[along] - pins.low[along] : pins.high[along] - tails.high[along],
         Bounds{Length(), Length(), {}, {}});
}

}  // namespace

void check_tails(Bench& bench) {
  for (std::size_t number = 0; number < bench.assembly.joints.size(); ++number) {
    const Joint& joint = bench.assembly.joints[number];
    if (joint.tails) check_flush(bench, number);
    if (joint.tails && joint.tails->spread > Length()) check_corner(bench, number);
  }
}

std::vector<const Rule*> rules_of_tails() {
  return {&kHalfPin, &kPin, &kTail, &kSlope, &kGroove, &kLap, &kFlush};
}

}  // namespace haunch
