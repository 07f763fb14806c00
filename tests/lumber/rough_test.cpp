// Rough sizes, glue-ups and takings-off, worked by hand.
#include "rough.h"

#include <cmath>

#include "glue_up.h"
#include "takings_off.h"
#include "vocabulary.h"

namespace haunch::test {
namespace {

using namespace haunch::lumber;

const std::vector<StockThickness> kOak = {{mm(27)}, {mm(40)}, {mm(54)}, {mm(80)}};

bool near(double a, double b) {
  return std::fabs(a - b) < 1e-9;
}

TEST_CASE("a stile grows by its horns and the allowances") {
  const FinishedPart stile{mm(2054), mm(118), mm(44), mm(25)};
  CHECK(rough_length(stile, usual_allowances(Unit::mm)) == mm(2129));  // 2054 + 2 x 25 + 25
  CHECK(rough_width(stile, usual_allowances(Unit::mm)) == mm(124));
}

TEST_CASE("44 mm comes from 54, as 40 is too thin and 80 a waste") {
  const auto ways = ways_to_thickness(mm(44), kOak, mm(2.5));  // 44 + 5 = 49
  REQUIRE(ways.size() == 4);
  CHECK(ways[0].stock == 2);
  CHECK(ways[0].layers == 1);
  CHECK(ways[1].stock == 3);
  // Two of 27 planed to 22 give exactly 44.
  CHECK(ways[2].stock == 0);
  CHECK(ways[2].layers == 2);
  CHECK(ways[2].glue_lines == std::vector{mm(22)});
}

TEST_CASE("where none is thick enough it is laminated, and the glue lines are told") {
  const auto ways = ways_to_thickness(mm(60), {{mm(27)}}, mm(2.5));  // 3 x 22 = 66
  REQUIRE(ways.size() == 1);
  CHECK(ways[0].layers == 3);
  CHECK(ways[0].glue_lines == std::vector{mm(20), mm(40)});
  CHECK(ways_to_thickness(mm(67), {{mm(27)}}, mm(2.5)).empty());
}

TEST_CASE("surfaced stock gives all it has, a sheet only what it is") {
  CHECK(ways_to_thickness(mm(20), {{mm(20), true, false}}, mm(2.5)).size() == 1);
  CHECK(ways_to_thickness(mm(20), {{mm(20)}}, mm(2.5)).front().layers == 2);
  CHECK(ways_to_thickness(mm(18), {{mm(18.5), true, true}}, mm(2.5)).size() == 1);
  CHECK(ways_to_thickness(mm(18), {{mm(19), true, true}}, mm(2.5)).empty());
}

TEST_CASE("quarters are read rough and surfaced, as the table has them") {
  CHECK(quarters_thickness("4/4", false) == Length::from_inch_parts(1));
  CHECK(quarters_thickness("4/4", true) == Length::from_inch_parts(13, 16));
  CHECK(quarters_thickness("6/4", true) == Length::from_inch_parts(21, 16));
  CHECK(quarters_thickness("7/4", true) == Length::from_inch_parts(3, 2));
  CHECK(quarters_thickness("14/4", true) == Length::from_inch_parts(13, 4));
  CHECK_FALSE(quarters_thickness("3/4", false).has_value());  // a plain fraction of an inch
  CHECK_FALSE(quarters_thickness("5/8", false).has_value());
  CHECK_FALSE(quarters_thickness("x/4", false).has_value());
}

TEST_CASE("a panel 325 wide is three strips of 109 and their jointing") {
  const StripRule rule{mm(150), mm(3), mm(1)};
  const auto strips = strips_for(mm(325), rule, mm(1000));  // 108.33 + 6 = 114.33
  REQUIRE(strips.has_value());
  CHECK(strips->count == 3);
  CHECK(strips->width == mm(115));
}

TEST_CASE("no wider stock, more strips") {
  const StripRule rule{mm(150), mm(3), mm(1)};
  CHECK(strips_for(mm(300), rule, mm(156))->count == 2);
  CHECK(strips_for(mm(300), rule, mm(155))->count == 3);
  CHECK_FALSE(strips_for(mm(300), rule, mm(6)).has_value());
}

TEST_CASE("thirty percent of what is bought is more than thirty percent added") {
  CHECK(near(to_buy(7, {30, true}), 10));
  CHECK(near(to_buy(10, {30, false}), 13));
}

TEST_CASE("a board foot is 12 by 12 by 1 inches, and thin stock counts as 1 inch") {
  const Area square = area_of(Length::from_inch_parts(12), Length::from_inch_parts(12));
  CHECK(near(board_feet(square, Length::from_inch_parts(1)), 1));
  CHECK(near(board_feet(square, Length::from_inch_parts(5, 4)), 1.25));
  CHECK(near(board_feet(square, Length::from_inch_parts(1, 2)), 1));
  CHECK(near(cubic_metres(area_of(mm(2000), mm(500)), mm(54)), 0.054));
}

}  // namespace
}  // namespace haunch::test
