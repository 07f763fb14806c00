#include "round_bore.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <numbers>

namespace haunch {
namespace {

constexpr int kQuarters = 4;

double steps(Length length) {
  return static_cast<double>(length.steps());
}

/// A hole's corners are rounded out of the wood and a peg's into it, so that what is between them
/// is least at their extremes, where it is exact.
enum class Round { hole, peg };

/// How far corner `i` of a quarter stands in from the tangent at the quarter's end, where the
/// circle's extreme is: at 0 the whole radius, at the last nothing.
Length inset(Length diameter, int i, int corners, Round what) {
  const double angle = 2 * std::numbers::pi * i / corners;
  const double in = steps(diameter) / 2 * (1 - std::sin(angle));
  return Length::from_steps(
      static_cast<std::int64_t>(what == Round::hole ? std::floor(in) : std::ceil(in)));
}

/// The corners of a quarter of the circle, from one extreme to the next, both included: u and v in
/// from the two edges of the square around it.
std::vector<Corner> quarter(Length diameter, int corners, Round what) {
  std::vector<Corner> arc;
  const int each = corners / kQuarters;
  for (int i = 0; i <= each; ++i)
    arc.push_back({inset(diameter, each - i, corners, what), inset(diameter, i, corners, what)});
  return arc;
}

}  // namespace

int bore_corners(Length diameter) {
  const double off = std::min(2 * steps(kBoreTolerance) / steps(diameter), 1.0);
  const double quarters = std::numbers::pi / std::acos(1 - off) / kQuarters;
  return kQuarters * std::max(static_cast<int>(std::ceil(quarters)), 1);
}

std::vector<Corner> bore_outline(Corner low, Length diameter, int corners) {
  const std::vector<Corner> arc = quarter(diameter, corners, Round::hole);
  std::vector<Corner> outline;
  const auto add = [&](const Corner& in, bool high_u, bool high_v) {
    const Corner corner{high_u ? low.u + diameter - in.u : low.u + in.u,
                        high_v ? low.v + diameter - in.v : low.v + in.v};
    if (outline.empty() || !(outline.back() == corner)) outline.push_back(corner);
  };
  for (auto it = arc.begin(); it != arc.end(); ++it)
    add(*it, false, false);
  for (auto it = arc.rbegin(); it != arc.rend(); ++it)
    add(*it, true, false);
  for (auto it = arc.begin(); it != arc.end(); ++it)
    add(*it, true, true);
  for (auto it = arc.rbegin(); it != arc.rend(); ++it)
    add(*it, false, true);
  if (outline.front() == outline.back()) outline.pop_back();
  return outline;
}

Prism round_hole(const Box& box, std::size_t along, int corners) {
  const auto [u, v] = across_axes(along);
  return {along, box.low[along], box.high[along],
          bore_outline({box.low[u], box.low[v]}, box.extent(u), corners)};
}

namespace {

std::vector<Prism> rounded(Length length, Length diameter, int corners, Round what) {
  std::vector<Prism> prisms;
  for (const bool high_u : {false, true})
    for (const bool high_v : {false, true}) {
      const auto placed = [&](const Corner& in) {
        return Corner{high_u ? diameter - in.u : in.u, high_v ? diameter - in.v : in.v};
      };
      Prism prism{0, Length(), length, {placed({Length(), Length()})}};
      for (const Corner& in : quarter(diameter, corners, what))
        prism.outline.push_back(placed(in));
      prisms.push_back(std::move(prism));
    }
  return prisms;
}

}  // namespace

std::vector<Prism> rounded_to_peg(Length length, Length diameter, int corners) {
  return rounded(length, diameter, corners, Round::peg);
}

std::vector<Prism> rounded_to_fill(Length length, Length diameter, int corners) {
  return rounded(length, diameter, corners, Round::hole);
}

}  // namespace haunch
