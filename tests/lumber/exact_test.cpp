// Figures that no length holds are exact until they are rounded, once.
#include "exact.h"

#include <random>

#include "effort.h"
#include "vocabulary.h"

namespace haunch::lumber::test {
namespace {

TEST_CASE("a third three times is a whole") {
  const Exact third = Exact::of(1, 3);
  CHECK(third.rounded(1, 2) == 33);
  CHECK(third.rounded(3, 2) == 100);
  CHECK(third.floored(2, 2) == 66);
  CHECK(third.rounded(2, 2) == 67);
}

TEST_CASE("a half of a hundredth goes up, and what is under it down") {
  CHECK(Exact::of(125, 1000).rounded(1, 2) == 13);
  CHECK(Exact::of(124'999, 1'000'000).rounded(1, 2) == 12);
  CHECK(Exact().rounded(5, 2) == 0);
}

TEST_CASE("fractions are kept in lowest terms") {
  CHECK(Exact::of(6, 9) == Exact::of(2, 3));
  CHECK(product(Exact::of(2, 3), Exact::of(9, 4)) == Exact::of(3, 2));
}

TEST_CASE("what is common to prices goes into each of them without a rest") {
  // Boards of 1800, 2100 and 2400 at 3.35 a metre: 6.03, 7.035 and 8.04 are 6, 7 and 8 of 1.005.
  Exact common;
  for (const int length : {1800, 2100, 2400})
    common = *common_measure(common, Exact::of(std::int64_t{335} * length, 100'000));
  CHECK(common == Exact::of(1005, 1000));
  CHECK(Exact::of(7035, 1000).floor_in(common, 100) == 7);
  CHECK_FALSE(Exact::of(7035, 1000).floor_in(common, 6).has_value());
}

TEST_CASE("a board of the oddest sizes and the highest price is reckoned with or refused") {
  // 100 m less a step each way: nothing can be shortened.
  const Wide steps = Length::from_mm(100'000).steps() - 1;
  const Wide metre = Length::from_mm(1000).steps();
  const Exact volume = Exact::of(steps * steps * steps, metre * metre * metre);
  CHECK(volume.rounded(1, 0) == 1'000'000);
  CHECK(volume.floored(100'000, 0) == 99'999'999'998);  // 3 steps of 1.6 10^11 short
  CHECK_FALSE(product(volume, Exact::of(99'999'999'999, 10'000)).has_value());
}

TEST_CASE("rounding agrees with long division of what fits") {
  std::mt19937_64 random(1);
  const auto any = [&](std::int64_t most) {
    return static_cast<std::int64_t>(random() % static_cast<std::uint64_t>(most));
  };
  for (std::int64_t run = 0; run < haunch::test::times_effort(20'000); ++run) {
    const std::int64_t whole = 1 + any(1'000'000);
    const std::int64_t parts = any(1'000'000'000);
    const std::int64_t count = any(1000);
    const std::int64_t scaled = parts * count * 100;
    const Exact exact = Exact::of(parts, whole);
    REQUIRE(exact.floored(count, 2) == scaled / whole);
    REQUIRE(exact.rounded(count, 2) == (2 * scaled + whole) / (2 * whole));
  }
}

}  // namespace
}  // namespace haunch::lumber::test
