#include "haunch/length.h"

#include <limits>
#include <type_traits>
#include <vector>

#include "catch.h"

using haunch::floor_divide;
using haunch::floor_half;
using haunch::floor_multiple;
using haunch::Length;
using haunch::LengthOverflow;
using haunch::nearest_multiple;

namespace {

constexpr Length steps(std::int64_t count) {
  return Length::from_steps(count);
}

constexpr Length kLongest = steps(std::numeric_limits<std::int64_t>::max());
constexpr Length kLowest = steps(std::numeric_limits<std::int64_t>::min());

// What shops write is whole steps, and so is the half of it.
static_assert(Length::from_mm(1).steps() == 1'600'000);
static_assert(Length::from_mm_thousandths(1).steps() == 1'600);
static_assert(Length::from_inch_parts(1).steps() == 40'640'000);
static_assert(Length::from_inch_parts(1, 512).steps() == 79'375);
static_assert(Length::from_inch_parts(1, 10'000).steps() == 4'064);
static_assert(Length::from_inch_parts(1) * 10 == Length::from_mm(254));
static_assert(Length::from_inch_parts(1, 512) * 512 == Length::from_inch_parts(1));
static_assert(Length::from_inch_parts(1, 10'000) * 10'000 == Length::from_inch_parts(1));
static_assert(floor_half(Length::from_inch_parts(1, 256)) == Length::from_inch_parts(1, 512));
static_assert(floor_half(Length::from_mm_thousandths(1)) * 2 == Length::from_mm_thousandths(1));
static_assert(Length::from_inch_parts(19, 8) == Length::from_mm_thousandths(60'325));
static_assert(Length::from_inch_parts(3, 64) == Length::from_steps(1'905'000));

// A length is made and read only through names that say the unit.
static_assert(!std::is_convertible_v<std::int64_t, Length>);
static_assert(!std::is_constructible_v<Length, std::int64_t>);
static_assert(!std::is_convertible_v<Length, std::int64_t>);

}  // namespace

TEST_CASE("a length that nobody set is nothing", "[length]") {
  CHECK(Length().steps() == 0);
  CHECK(Length::from_mm(0) == Length());
}

TEST_CASE("lengths add up to the step, whatever the order", "[length]") {
  const std::vector<Length> sizes{Length::from_mm(118), Length::from_inch_parts(19, 8), steps(1),
                                  Length::from_mm_thousandths(-150), Length()};
  for (const Length a : sizes)
    for (const Length b : sizes) {
      CHECK(a + b == b + a);
      CHECK(a + b - b == a);
      CHECK(a - b == -(b - a));
      CHECK((a + b) * 3 == 3 * a + b * 3);
      CHECK((a < b) == (b - a > Length()));
    }
}

TEST_CASE("a size grows and shrinks in place", "[length]") {
  Length rail = Length::from_mm(195);
  rail += Length::from_mm(3);
  CHECK(rail == Length::from_mm(198));
  rail -= Length::from_mm(200);
  CHECK(rail == -Length::from_mm(2));
}

TEST_CASE("a sum, difference or product too large to hold is an error, never a wrap", "[length]") {
  CHECK(kLongest + Length() == kLongest);
  CHECK_THROWS_AS(kLongest + steps(1), LengthOverflow);
  CHECK_THROWS_AS(kLowest + steps(-1), LengthOverflow);
  CHECK(kLowest - steps(-1) == steps(1) - kLongest - steps(1));
  CHECK_THROWS_AS(kLowest - steps(1), LengthOverflow);
  CHECK_THROWS_AS(kLongest - steps(-1), LengthOverflow);
  CHECK_THROWS_AS(-kLowest, LengthOverflow);
  CHECK(kLongest * -1 == -kLongest);
  CHECK_THROWS_AS(kLongest * 2, LengthOverflow);
  CHECK_THROWS_AS(kLowest * -1, LengthOverflow);
  CHECK_THROWS_AS(2 * kLowest, LengthOverflow);
  CHECK_THROWS_AS(Length::from_mm(5'764'607'523'035), LengthOverflow);
  CHECK(Length::from_mm(5'764'607'523'034).steps() == 9'223'372'036'854'400'000);
  CHECK_THROWS_AS(Length::from_mm_thousandths(5'764'607'523'034'235), LengthOverflow);
  CHECK_THROWS_AS(Length::from_inch_parts(std::int64_t{1} << 38), LengthOverflow);
  Length length = kLongest;
  CHECK_THROWS_AS(length += steps(1), LengthOverflow);
  CHECK(length == kLongest);
}

TEST_CASE("rounding down goes towards the floor, below zero too", "[length]") {
  const Length unit = Length::from_inch_parts(1, 16);
  CHECK(floor_multiple(Length::from_inch_parts(33, 16), unit) == Length::from_inch_parts(33, 16));
  CHECK(floor_multiple(Length::from_inch_parts(67, 32), unit) == Length::from_inch_parts(33, 16));
  CHECK(floor_multiple(Length(), unit) == Length());
  CHECK(floor_multiple(steps(-1), unit) == -unit);
  CHECK(floor_multiple(-unit, unit) == -unit);
  CHECK(floor_multiple(-unit - steps(1), unit) == unit * -2);
}

TEST_CASE("the nearest multiple of a unit, a tie going up", "[length]") {
  CHECK(nearest_multiple(steps(14), steps(10)) == steps(10));
  CHECK(nearest_multiple(steps(15), steps(10)) == steps(20));
  CHECK(nearest_multiple(steps(16), steps(10)) == steps(20));
  CHECK(nearest_multiple(steps(-14), steps(10)) == steps(-10));
  CHECK(nearest_multiple(steps(-15), steps(10)) == steps(-10));
  CHECK(nearest_multiple(steps(-16), steps(10)) == steps(-20));
  CHECK(nearest_multiple(steps(4), steps(7)) == steps(7));
  CHECK(nearest_multiple(steps(3), steps(7)) == steps(0));
  CHECK(nearest_multiple(steps(-3), steps(7)) == steps(0));
  CHECK(nearest_multiple(steps(-4), steps(7)) == steps(-7));
  CHECK(nearest_multiple(steps(5), steps(1)) == steps(5));
}

TEST_CASE("what does not share out evenly is shared out low, less than a step a share",
          "[length]") {
  CHECK(floor_divide(steps(12), 4) == steps(3));
  CHECK(floor_divide(steps(13), 4) == steps(3));
  CHECK(floor_divide(steps(15), 4) == steps(3));
  CHECK(floor_divide(steps(-13), 4) == steps(-4));
  CHECK(floor_divide(steps(-12), 4) == steps(-3));
  CHECK(floor_divide(Length::from_mm(2), 3) == steps(1'066'666));
  CHECK(floor_half(steps(3)) == steps(1));
  CHECK(floor_half(steps(-3)) == steps(-2));
}
