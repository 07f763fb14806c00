// Areas, exact: sums of them add up to the last step.
//
//   make      Area(), area_of(length, width)
//   reckon    + - += compare
//   read      square_mm (nearest double), floor_square_mm
#pragma once

#include <compare>
#include <cstdint>

#include "haunch/length.h"

namespace haunch::lumber {

/// 128 bits, as two lengths multiplied do not fit 64: a sheet is about 10^19 square steps.
__extension__ typedef __int128 Wide;

/// An area in square steps of Length.
struct Area {
  Wide square_steps = 0;

  friend constexpr auto operator<=>(const Area&, const Area&) = default;
  friend constexpr Area operator+(Area a, Area b) { return {a.square_steps + b.square_steps}; }
  friend constexpr Area operator-(Area a, Area b) { return {a.square_steps - b.square_steps}; }
  constexpr Area& operator+=(Area other) { return *this = *this + other; }
  constexpr Area& operator-=(Area other) { return *this = *this - other; }
};

constexpr Area area_of(Length length, Length width) {
  return {static_cast<Wide>(length.steps()) * width.steps()};
}

/// The nearest double, for printing.
constexpr double square_mm(Area area) {
  constexpr auto kStep = static_cast<double>(Length::kStepsPerMm);
  return static_cast<double>(area.square_steps) / kStep / kStep;
}

/// Whole square millimetres of an area >= 0, rounded down.
constexpr std::int64_t floor_square_mm(Area area) {
  constexpr Wide kSquare = static_cast<Wide>(Length::kStepsPerMm) * Length::kStepsPerMm;
  return static_cast<std::int64_t>(area.square_steps / kSquare);
}

}  // namespace haunch::lumber
