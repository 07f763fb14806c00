#include "moisture.h"

#include <algorithm>

namespace haunch {
namespace {

/// The total shrinkage, in percent, to reckon with outside of 6 to 14 %.
std::optional<double> wide_shrinkage(const Species& species, Direction direction) {
  const auto coefficient = coefficient_of(species, direction);
  if (!coefficient) return {};
  const double c = coefficient->per_percent;
  const double implied = 3000 * c / (1 + 20 * c);  // coefficient_of's rule, turned round
  const auto printed =
      direction == Direction::radial ? species.radial_shrinkage : species.tangential_shrinkage;
  return std::max(implied, printed.value_or(0));
}

/// Equation 4-11: specific gravity at a moisture from that of the green wood.
double gravity_from_green(double green, double moisture_percent) {
  const double below = 1 - std::min(moisture_percent, kFibreSaturation) / kFibreSaturation;
  return green / (1 - 0.265 * green * below);
}

/// Equation 4-11 the other way, from 12 %.
double green_from_12(double gravity_12) {
  return gravity_12 / (1 + 0.265 * gravity_12 * (1 - 12 / kFibreSaturation));
}

}  // namespace

std::optional<double> equilibrium_moisture(double celsius, double humidity_percent) {
  const bool known = celsius >= kColdestCelsius && celsius <= kHottestCelsius &&
                     humidity_percent >= kDriestAir && humidity_percent <= kDampestAir;
  if (!known) return {};
  const double t = celsius;
  const double h = humidity_percent / 100;
  const double w = 349 + 1.29 * t + 0.0135 * t * t;
  const double k = 0.805 + 0.000736 * t - 0.00000273 * t * t;
  const double k1 = 6.27 - 0.00938 * t - 0.000303 * t * t;
  const double k2 = 1.91 + 0.0407 * t - 0.000293 * t * t;
  const double kh = k * h;
  const double one = k1 * kh;
  const double two = k1 * k2 * kh * kh;
  return 1800 / w * (kh / (1 - kh) + (one + 2 * two) / (1 + one + two));
}

double wide_range_ratio(double shrinkage_percent, double from, double to) {
  const double start = std::min(from, kFibreSaturation);
  const double end = std::min(to, kFibreSaturation);
  return (end - start) * shrinkage_percent /
         (100 * kFibreSaturation + (start - kFibreSaturation) * shrinkage_percent);
}

std::optional<double> movement_ratio(const Species& species, Direction direction, double from,
                                     double to) {
  const auto coefficient = coefficient_of(species, direction);
  const auto shrinkage = wide_shrinkage(species, direction);
  if (!coefficient || !shrinkage) return {};
  // The way into the narrow range, through it, and out of it.
  const double enters = std::clamp(from, kNarrowLow, kNarrowHigh);
  const double leaves = std::clamp(to, kNarrowLow, kNarrowHigh);
  if (enters == leaves) return wide_range_ratio(*shrinkage, from, to);
  const double after_first = 1 + wide_range_ratio(*shrinkage, from, enters);
  const double after_second = after_first * (1 + coefficient->per_percent * (leaves - enters));
  return after_second * (1 + wide_range_ratio(*shrinkage, leaves, to)) - 1;
}

std::optional<double> density_kg_m3(const Species& species, double moisture_percent) {
  if (!species.gravity_green && !species.gravity_12) return {};
  const double green =
      species.gravity_green ? *species.gravity_green : green_from_12(*species.gravity_12);
  double gravity = gravity_from_green(green, moisture_percent);
  if (species.gravity_12) gravity *= *species.gravity_12 / gravity_from_green(green, 12);
  return 1000 * gravity * (1 + moisture_percent / 100);
}

}  // namespace haunch
