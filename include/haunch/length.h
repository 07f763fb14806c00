// A length, exact: the one number type that every size and place in haunch is made of.
//
//   make      Length::from_steps, from_mm, from_mm_thousandths, from_inch_parts
//   read      steps()
//   reckon    + - * (by a whole number), floor_divide, floor_half, compare
//   round     nearest_multiple, floor_multiple, ceiling_multiple
//
// Text in and out of lengths is in haunch/length_text.h.
#pragma once

#include <compare>
#include <cstdint>
#include <stdexcept>

namespace haunch {

/// A sum, difference or product of lengths left the 64-bit range (about 5.7 million kilometres).
class LengthOverflow : public std::overflow_error {
 public:
  LengthOverflow() : std::overflow_error("a length is too large to reckon with") {}
};

/// A length or a place along a line, signed, as a whole number of steps of 1/1 600 000 mm.
///
/// The step is chosen so that whatever a shop writes is whole: 0.001 mm = 1 600 steps,
/// 1 in = 40 640 000, 1/512 in = 79 375, 0.0001 in = 4 064. Sums, differences and whole multiples
/// are exact; one that does not fit throws LengthOverflow. Nothing rounds except where the name
/// says so.
class Length {
 public:
  static constexpr std::int64_t kStepsPerMm = 1'600'000;
  static constexpr std::int64_t kStepsPerInch = 40'640'000;  // 25.4 mm, exact by definition

  constexpr Length() = default;

  static constexpr Length from_steps(std::int64_t steps) { return Length(steps); }
  static constexpr Length from_mm(std::int64_t mm) { return Length(kStepsPerMm) * mm; }
  static constexpr Length from_mm_thousandths(std::int64_t thousandths) {
    return Length(kStepsPerMm / 1000) * thousandths;
  }
  /// parts/of of an inch; `of` must divide 40 640 000 (any power of two to 512, any of ten to
  /// 10 000).
  static constexpr Length from_inch_parts(std::int64_t parts, std::int64_t of = 1) {
    return Length(kStepsPerInch / of) * parts;
  }

  constexpr std::int64_t steps() const { return steps_; }

  friend constexpr auto operator<=>(Length, Length) = default;

  friend constexpr Length operator+(Length a, Length b) {
    std::int64_t sum = 0;
    if (__builtin_add_overflow(a.steps_, b.steps_, &sum)) throw LengthOverflow();
    return Length(sum);
  }
  friend constexpr Length operator-(Length a, Length b) {
    std::int64_t difference = 0;
    if (__builtin_sub_overflow(a.steps_, b.steps_, &difference)) throw LengthOverflow();
    return Length(difference);
  }
  friend constexpr Length operator*(Length a, std::int64_t times) {
    std::int64_t product = 0;
    if (__builtin_mul_overflow(a.steps_, times, &product)) throw LengthOverflow();
    return Length(product);
  }
  friend constexpr Length operator*(std::int64_t times, Length a) { return a * times; }
  friend constexpr Length operator-(Length a) { return Length() - a; }
  constexpr Length& operator+=(Length other) { return *this = *this + other; }
  constexpr Length& operator-=(Length other) { return *this = *this - other; }

 private:
  explicit constexpr Length(std::int64_t steps) : steps_(steps) {}
  std::int64_t steps_ = 0;
};

/// The whole multiple of `unit` (> 0) at or below `length`.
constexpr Length floor_multiple(Length length, Length unit) {
  std::int64_t over = length.steps() % unit.steps();
  if (over < 0) over += unit.steps();
  return length - Length::from_steps(over);
}

/// The whole multiple of `unit` (> 0) at or above `length`.
constexpr Length ceiling_multiple(Length length, Length unit) {
  return -floor_multiple(-length, unit);
}

/// The whole multiple of `unit` (> 0) nearest to `length`; a tie goes up.
constexpr Length nearest_multiple(Length length, Length unit) {
  return floor_multiple(length + Length::from_steps(unit.steps() / 2), unit);
}

/// `length` shared among `parts` (> 0), rounded down to the step; the odd steps are the caller's to
/// place.
constexpr Length floor_divide(Length length, std::int64_t parts) {
  return Length::from_steps(floor_multiple(length, Length::from_steps(parts)).steps() / parts);
}

constexpr Length floor_half(Length length) {
  return floor_divide(length, 2);
}

}  // namespace haunch
