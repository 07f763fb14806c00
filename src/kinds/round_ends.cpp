#include "round_ends.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "rounding.h"

namespace haunch {
namespace {

double steps(Length length) {
  return static_cast<double>(length.steps());
}

/// Distances from the side wall at which a quarter circle is drawn with corners, from 0 to the
/// radius; for every radius at the same angles, so that a tenon is nowhere nearer to its mortise's
/// end than at its middle.
std::vector<Length> corners_of_quarter(Length radius) {
  std::vector<Length> corners;
  for (int i = 0; i < kPartsOfQuarter; ++i)
    corners.push_back(
        nearest_step(steps(radius) * (1 - std::cos(std::numbers::pi / 2 * i / kPartsOfQuarter))));
  corners.push_back(radius);
  return corners;
}

}  // namespace

Length end_inset(Length radius, Length from_wall) {
  if (from_wall >= radius) return {};
  const double r = steps(radius);
  const double above = r - steps(from_wall);
  const double inset = r - std::sqrt(r * r - above * above);
  return std::min(Length::from_steps(static_cast<std::int64_t>(std::ceil(inset))), radius);
}

Length free_width(Length mortise_length, Length radius, Length play) {
  return mortise_length - end_inset(radius, play) * 2;
}

std::vector<Prism> slot_ends(const Outline& slot, Length radius, Length play, std::size_t along,
                             Length from, Length to) {
  std::vector<Length> heights = corners_of_quarter(radius);
  if (play > Length() && play < radius) heights.push_back(play);
  std::sort(heights.begin(), heights.end());
  heights.erase(std::unique(heights.begin(), heights.end()), heights.end());
  Prism low{along, from, to, {}};
  Prism high{along, from, to, {}};
  const auto add = [&](Length height, Length v) {
    const Length inset = end_inset(radius, height);
    low.outline.push_back({slot.u0 + inset, v});
    high.outline.push_back({slot.u1 - inset, v});
  };
  for (const Length height : heights)
    add(height, slot.v0 + height);
  const bool half_round = slot.v1 - slot.v0 == radius * 2;
  for (auto height = heights.rbegin() + (half_round ? 1 : 0); height != heights.rend(); ++height)
    add(*height, slot.v1 - *height);
  return {low, high};
}

std::vector<Prism> rounded_edge(const Outline& tenon, bool at_high, Length radius, Length from,
                                Length to) {
  if (radius <= Length() || from >= to) return {};
  std::vector<Prism> prisms;
  for (const bool back : {false, true}) {
    Prism prism{0, from, to, {}};
    const auto add = [&](Length in, Length height) {
      prism.outline.push_back(
          {at_high ? tenon.u1 - in : tenon.u0 + in, back ? tenon.v1 - height : tenon.v0 + height});
    };
    add(Length(), Length());
    for (const Length height : corners_of_quarter(radius))
      add(end_inset(radius, height), height);
    prisms.push_back(std::move(prism));
  }
  return prisms;
}

}  // namespace haunch
