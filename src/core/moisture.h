// Moisture in wood: what the air brings it to, how far it moves the wood, what it weighs.
//
// Moisture is mass of water over oven-dry mass, in percent. The formulas are those of the USDA
// Forest Products Laboratory, Wood Handbook.
#pragma once

#include <optional>

#include "species.h"

namespace haunch {

// ---- air

constexpr double to_celsius(double fahrenheit) {
  return (fahrenheit - 32) * 5 / 9;
}

/// The published table runs from 30 to 270 °F and from 5 to 95 % relative humidity; beyond it the
/// equation is only guessed on.
inline constexpr double kColdestCelsius = to_celsius(30);
inline constexpr double kHottestCelsius = to_celsius(270);
inline constexpr double kDriestAir = 5;
inline constexpr double kDampestAir = 95;

/// The moisture that wood comes to in air of this temperature and relative humidity, in percent;
/// nothing outside of the published table.
///
/// Wood Handbook 2010, equation 4-5 (Simpson 1998, FPL-RN-0268), the constants for Celsius. The
/// table's figures come out within its rounding. Mostly from spruce, between the drying and the
/// wetting curve: single boards differ by more than a tenth.
std::optional<double> equilibrium_moisture(double celsius, double humidity_percent);

// ---- movement

/// No wood moves above this moisture; the usual value where a species' own is not known.
inline constexpr double kFibreSaturation = 30;

/// Between these, both included, movement goes by the coefficient.
inline constexpr double kNarrowLow = 6;
inline constexpr double kNarrowHigh = 14;

/// What a dimension changes by, as a ratio of itself at `from` (-0.02: 2 % narrower), when its
/// moisture goes from `from` to `to` percent, both 0 or more. Nothing when no figure is known.
///
/// Between 6 and 14 %: coefficient * (to - from), Wood Handbook 2010, equation 13-2. The part of
/// the way that lies outside goes by wide_range_ratio, with the total shrinkage or that which the
/// coefficient implies, whichever is larger: where the two disagree the wood of the door is not to
/// move more than it was given room for. Going further always moves more, up to fibre saturation.
std::optional<double> movement_ratio(const Species& species, Direction direction, double from,
                                     double to);

/// The same over any range from oven-dry up, by the total shrinkage in percent:
/// (to - from) / (3000 / shrinkage - 30 + from), from Wood Handbook 2021, equation 4-9, with fibre
/// saturation at 30 %; nothing moves above it.
double wide_range_ratio(double shrinkage_percent, double from, double to);

// ---- weight

/// Mass over volume, both at `moisture_percent` (0 or more): 1000 * G * (1 + moisture / 100), Wood
/// Handbook 2010, chapter 4. G is the specific gravity at that moisture: the printed one at 12 % or
/// green, brought there by equation 4-11. Nothing when none is printed.
std::optional<double> density_kg_m3(const Species& species, double moisture_percent);

/// Kilograms in a cubic metre of glass (EN 572-1).
constexpr double kGlassDensity = 2500;

}  // namespace haunch
