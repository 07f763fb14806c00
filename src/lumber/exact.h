// Figures that are no lengths, exact: how much a board is in cubic metres or board feet, and money.
//
//   make    Exact(), Exact::of(parts, whole)
//   reckon  product, common_measure
//   round   rounded, floored, floor_in: nothing else rounds
#pragma once

#include <cstdint>
#include <optional>

#include "area.h"

namespace haunch::lumber {

/// A fraction >= 0 in lowest terms.
class Exact {
 public:
  constexpr Exact() = default;
  /// parts / whole. Requires parts >= 0 and whole > 0.
  static Exact of(Wide parts, Wide whole = 1);

  friend bool operator==(const Exact&, const Exact&) = default;

  /// `count` of it in units of 10^-places, to the nearest, a half upwards: one rounding for all of
  /// them together. Requires what comes of it to fit 64 bits.
  std::int64_t rounded(std::int64_t count, int places) const;
  /// The same rounded down.
  std::int64_t floored(std::int64_t count, int places) const;
  /// How often `unit` (> 0) goes into it; nothing where that is over `most`.
  std::optional<std::int64_t> floor_in(const Exact& unit, std::int64_t most) const;

  // Both give nothing where the terms do not fit 128 bits.
  friend std::optional<Exact> product(const Exact& a, const Exact& b);
  /// The greatest that goes into both without a rest; of zero and another it is the other.
  friend std::optional<Exact> common_measure(const Exact& a, const Exact& b);

 private:
  Wide parts_ = 0;
  Wide whole_ = 1;
};

std::optional<Exact> product(const Exact& a, const Exact& b);
std::optional<Exact> common_measure(const Exact& a, const Exact& b);

}  // namespace haunch::lumber
