#include "exact.h"

namespace haunch::lumber {
namespace {

__extension__ typedef unsigned __int128 UnsignedWide;

Wide greatest_common_divisor(Wide a, Wide b) {
  while (b != 0) {
    const Wide rest = a % b;
    a = b;
    b = rest;
  }
  return a;
}

std::optional<Wide> times(Wide a, Wide b) {
  Wide result = 0;
  if (__builtin_mul_overflow(a, b, &result)) return {};
  return result;
}

Wide power_of_ten(int places) {
  Wide power = 1;
  for (int i = 0; i < places; ++i)
    power *= 10;
  return power;
}

struct Division {
  Wide quotient = 0;
  Wide rest = 0;
};

/// a * b / c, bit by bit of `b`, as a * b may not fit. Requires the quotient to fit.
Division multiply_and_divide(Wide a, Wide b, Wide c) {
  constexpr int kBits = 127;
  const auto divisor = static_cast<UnsignedWide>(c);
  const auto remainder_of_a = static_cast<UnsignedWide>(a % c);
  UnsignedWide quotient = 0;
  UnsignedWide rest = 0;
  const auto add = [&](UnsignedWide more) {  // more < divisor
    rest += more;
    if (rest < divisor) return;
    rest -= divisor;
    ++quotient;
  };
  for (int bit = kBits - 1; bit >= 0; --bit) {
    quotient *= 2;
    add(rest);
    if (((b >> bit) & 1) != 0) add(remainder_of_a);
  }
  return {a / c * b + static_cast<Wide>(quotient), static_cast<Wide>(rest)};
}

}  // namespace

Exact Exact::of(Wide parts, Wide whole) {
  const Wide common = greatest_common_divisor(whole, parts);
  Exact exact;
  exact.parts_ = parts / common;
  exact.whole_ = whole / common;
  return exact;
}

std::int64_t Exact::rounded(std::int64_t count, int places) const {
  const Division exact = multiply_and_divide(parts_, power_of_ten(places) * count, whole_);
  const bool up = exact.rest >= whole_ - exact.rest;
  return static_cast<std::int64_t>(exact.quotient) + (up ? 1 : 0);
}

std::int64_t Exact::floored(std::int64_t count, int places) const {
  return static_cast<std::int64_t>(
      multiply_and_divide(parts_, power_of_ten(places) * count, whole_).quotient);
}

std::optional<std::int64_t> Exact::floor_in(const Exact& unit, std::int64_t most) const {
  const Wide parts = greatest_common_divisor(unit.parts_, parts_);
  const Wide wholes = greatest_common_divisor(unit.whole_, whole_);
  const Wide factor = unit.whole_ / wholes;
  const auto divisor = times(whole_ / wholes, unit.parts_ / parts);
  if (!divisor || !times(parts_ / parts / *divisor, factor)) return {};
  const Wide often = multiply_and_divide(parts_ / parts, factor, *divisor).quotient;
  return often <= most ? std::optional(static_cast<std::int64_t>(often)) : std::nullopt;
}

std::optional<Exact> product(const Exact& a, const Exact& b) {
  const Exact one = Exact::of(a.parts_, b.whole_);
  const Exact other = Exact::of(b.parts_, a.whole_);
  const auto parts = times(one.parts_, other.parts_);
  const auto whole = times(one.whole_, other.whole_);
  return parts && whole ? std::optional(Exact::of(*parts, *whole)) : std::nullopt;
}

std::optional<Exact> common_measure(const Exact& a, const Exact& b) {
  // Of fractions in lowest terms: the measure of the parts over the least multiple of the wholes.
  const auto whole = times(a.whole_ / greatest_common_divisor(a.whole_, b.whole_), b.whole_);
  if (!whole) return {};
  return Exact::of(greatest_common_divisor(a.parts_, b.parts_), *whole);
}

}  // namespace haunch::lumber
