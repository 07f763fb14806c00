// Openings as they were found: what fits in, and what is left where.
#include "found_opening.h"

#include <array>
#include <cmath>
#include <random>

#include "../findings.h"
#include "../vocabulary.h"

namespace haunch::test {
namespace {

OpeningReadings readings(std::array<double, 3> widths, std::array<double, 3> heights,
                         std::array<double, 2> diagonals) {
  return {{mm(widths[0]), mm(widths[1]), mm(widths[2])},
          {mm(heights[0]), mm(heights[1]), mm(heights[2])},
          {mm(diagonals[0]), mm(diagonals[1])}};
}

/// Four corners that stand a little off a rectangle, measured with an exact tape.
OpeningReadings measured(std::mt19937& random, double most) {
  std::uniform_real_distribution<double> off(-most, most);
  const auto corner = [&](double x, double y) {
    return std::array{x + off(random), y + off(random)};
  };
  const double width = 400 + std::abs(off(random)) * 50, height = 700 + std::abs(off(random)) * 90;
  const auto a = corner(0, 0), b = corner(width, 0), c = corner(width, height),
             d = corner(0, height);
  const auto between = [](auto p, auto q) { return std::hypot(p[0] - q[0], p[1] - q[1]); };
  const auto half = [](auto p, auto q) { return std::array{(p[0] + q[0]) / 2, (p[1] + q[1]) / 2}; };
  return readings({between(d, c), between(half(a, d), half(b, c)), between(a, b)},
                  {between(a, d), between(half(a, b), half(d, c)), between(b, c)},
                  {between(a, c), between(b, d)});
}

}  // namespace

TEST_CASE("An opening that is square is as large as it reads") {
  const SquareOpening square =
      largest_square(readings({930, 930, 930}, {2060, 2060, 2060}, {2260.2, 2260.2}), Unit::mm);
  CHECK(square.width == mm(930));
  CHECK(square.height == mm(2060));
  CHECK(square.found == AsFound());
}

TEST_CASE("Diagonals to whole millimetres do not make a square opening crooked") {
  const OpeningReadings whole = readings({930, 930, 930}, {2060, 2060, 2060}, {2260, 2260});
  CHECK_FALSE(disagree(*diagonal_short(whole)));
  CHECK(largest_square(whole, Unit::mm).width == mm(930));
  CHECK(largest_square(whole, Unit::mm).height == mm(2060));
}

// The head stands (2263^2 - 2257.4^2) / (4 x 930) = 6.8 to the right. What stands in line with the
// jambs loses no width, and of the height 6.8 x 930 / 2060 = 3.07, which is told as 3.5.
TEST_CASE("In an opening that leans, the largest square one goes with the jambs") {
  const SquareOpening square =
      largest_square(readings({930, 930, 930}, {2060, 2060, 2060}, {2263, 2257.4}), Unit::mm);
  CHECK(square.width == mm(930));
  CHECK(square.height == mm(2056.5));
  CHECK(square.found.left == std::array<Length, 3>{});
  CHECK(square.found.right == std::array<Length, 3>{});
  // Half of the 0.43 that the height was rounded by, and at the far corners the 3.07.
  CHECK(square.found.head == std::array{mm(0.2), mm(1.75), mm(3.3)});
  CHECK(square.found.foot == std::array{mm(3.3), mm(1.75), mm(0.2)});
}

TEST_CASE("A bulge in the middle of the jambs narrows the opening, by half of it at each") {
  const SquareOpening square =
      largest_square(readings({930, 926, 930}, {2060, 2060, 2060}, {2260.2, 2260.2}), Unit::mm);
  CHECK(square.width == mm(926));
  CHECK(square.found.left == std::array{mm(2), Length(), mm(2)});
  CHECK(square.found.right == std::array{mm(2), Length(), mm(2)});
}

TEST_CASE("Gaps and opening add up to what was read, wherever it was read") {
  std::mt19937 random(20);
  for (int i = 0; i < 400; ++i) {
    const OpeningReadings read = measured(random, 6);
    const SquareOpening square = largest_square(read, Unit::mm);
    const AsFound& found = square.found;
    for (std::size_t at = 0; at < 3; ++at) {
      CHECK(found.left[at] >= Length());
      CHECK(found.right[at] >= Length());
      CHECK(found.head[at] >= Length());
      CHECK(found.foot[at] >= Length());
      // Each is rounded down to a tenth, and told square to a leaf that stands a little turned.
      const Length across = found.left[at] + square.width + found.right[at];
      const Length upright = found.head[at] + square.height + found.foot[at];
      CHECK(across <= read.widths[at] + mm(0.05));
      CHECK(across >= read.widths[at] - mm(0.35));
      CHECK(upright <= read.heights[at] + mm(0.05));
      CHECK(upright >= read.heights[at] - mm(0.35));
    }
  }
}

TEST_CASE("No square opening is larger than the tightest readings, nor smaller than needs be") {
  std::mt19937 random(21);
  for (int i = 0; i < 400; ++i) {
    const OpeningReadings read = measured(random, 6);
    const SquareOpening square = largest_square(read, Unit::mm);
    const auto tightest = [](const std::array<Length, 3>& all) {
      return *std::min_element(all.begin(), all.end());
    };
    CHECK(square.width <= tightest(read.widths));
    CHECK(square.height <= tightest(read.heights));
    // A corner is at most 6 off each way, so two of them at most 12, and half a millimetre is
    // rounded.
    CHECK(square.width >= tightest(read.widths) - mm(12.5));
    CHECK(square.height >= tightest(read.heights) - mm(12.5));
  }
}

TEST_CASE("A leaf that follows leaves its gaps all round, and loses nothing at one end of a side") {
  std::mt19937 random(22);
  for (int i = 0; i < 400; ++i) {
    const SquareOpening box = box_to_follow(measured(random, 3), Unit::mm);
    for (const auto* side : {&box.found.left, &box.found.right, &box.found.head, &box.found.foot}) {
      const Taper taper = taper_along(*side, true);
      CHECK(std::min(taper.first, taper.last) == Length());
      for (const Length gap : gaps_along(*side, mm(3), true)) {
        CHECK(gap >= mm(3));
        CHECK(gap <= mm(3.7));  // 0.5 of the box, shared by two sides, and tenths
      }
    }
  }
}

// Of a rectangle both are 2260.2; with one 3 longer the other is 3 shorter, but for second order.
TEST_CASE("A diagonal that does not go with the sides and the first is told by how much") {
  const auto short_of = [](double first, double second) {
    return *diagonal_short(readings({930, 930, 930}, {2060, 2060, 2060}, {first, second}));
  };
  CHECK(short_of(2263.2, 2263.2) < -mm(5.98));
  CHECK(short_of(2263.2, 2263.2) > -mm(6.02));
  CHECK(short_of(2257.2, 2257.2) > mm(5.98));
  CHECK(short_of(2263.2, 2257.2) < mm(0.02));
  CHECK_FALSE(diagonal_short(readings({930, 930, 930}, {2060, 2060, 2060}, {900, 900})));
}

// What is wrong by 6 on one diagonal is by 3 on each, shared out. On one alone the head leans by
// 2260 x 3 / 930 = 7.3 more: that costs the height 7.3 x 930 / 2060 = 3.3.
TEST_CASE("Of readings that disagree the tightest shape is taken") {
  const OpeningReadings read = readings({930, 930, 930}, {2060, 2060, 2060}, {2266.2, 2260.2});
  CHECK(disagree(*diagonal_short(read)));
  const SquareOpening square = largest_square(read, Unit::mm);
  const SquareOpening shared =
      largest_square(readings({930, 930, 930}, {2060, 2060, 2060}, {2263.2, 2257.2}), Unit::mm);
  CHECK(square.height <= shared.height - mm(3));
  CHECK(square.height >= shared.height - mm(4));
}

// At the left 4 mm come in at the head and none at the foot; the middle bulges, so that 3 come in
// there and not 2.
TEST_CASE("Where a side bulges, the end that loses more is planed more") {
  const std::array side{-mm(4), -mm(3), Length()};
  CHECK(taper_along(side, true).first == mm(6));
  CHECK(taper_along(side, true).last == Length());
  CHECK(gaps_along(side, mm(3), true) == std::array{mm(5), mm(3), mm(3)});
}

TEST_CASE("A leaf planed to jambs that bulge goes in") {
  const std::string spec =
      R"({"kind": "door", "units": "mm", "opening": {"widths": [934, 926, 929],
          "heights": [2061, 2060, 2058], "diagonals": [2262, 2260.5], "follow": true,
          "most_planed": 12}})";
  CHECK(fails_of(check_assembly(wood(spec), Unit::mm)).empty());
}

TEST_CASE("A planed leaf goes together and into its opening, whatever that is") {
  std::mt19937 random(23);
  for (int i = 0; i < 20; ++i) {
    const OpeningReadings read = measured(random, 1.5);
    const auto list = [](const auto& all) {
      std::string text;
      for (const Length length : all)
        text += (text.empty() ? "" : ", ") + decimal(length, Unit::mm);
      return "[" + text + "]";
    };
    const std::string spec = R"({"kind": "door", "units": "mm", "opening": {"widths": )" +
                             list(read.widths) + R"(, "heights": )" + list(read.heights) +
                             R"(, "diagonals": )" + list(read.diagonals) + R"(, "follow": true}})";
    INFO(spec);
    CHECK(fails_of(check_assembly(wood(spec), Unit::mm)).empty());
  }
}

}  // namespace haunch::test
