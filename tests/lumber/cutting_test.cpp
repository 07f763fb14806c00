#include "cutting.h"

#include "catch.h"
#include "every_way.h"
#include "orders.h"
#include "plan_oracle.h"

using namespace haunch;
using namespace haunch::lumber;

namespace {

Plan sound_plan(const CuttingOrder& order) {
  const Plan plan = plan_cutting(order);
  CHECK(objections(plan, order).empty());
  CHECK(faults_of(plan, order).empty());
  return plan;
}

}  // namespace

TEST_CASE("nothing wanted, nothing cut") {
  const Plan plan = plan_cutting({});
  CHECK(plan.boards.empty());
  CHECK(plan.unplaced.empty());
}

TEST_CASE("three parts of 997 with two kerfs of 4 and a rest of 1 come out of 3000") {
  const Plan plan = sound_plan(order_of({part(997, 100), part(997, 100), part(997, 100)},
                                        {yard("board", 3000, 100, 700)}, 4));
  CHECK(plan.boards.size() == 1);
  CHECK(plan.totals.cost == 700);
  CHECK(plan.bounds.proven);
  // Two blades between, and the last cut leaves no more than 1 mm of wood: dust too.
  CHECK(plan.totals.kerf == area_of(mm(9), mm(100)));
  CHECK(plan.totals.scrap == Area());
}

TEST_CASE("one kerf too many and a second board is needed") {
  const Plan plan = sound_plan(order_of({part(998, 100), part(998, 100), part(998, 100)},
                                        {yard("board", 3000, 100, 700)}, 4));
  CHECK(plan.boards.size() == 2);
  CHECK(plan.bounds.proven);
}

TEST_CASE("wood in hand goes first: nothing is bought when it will do") {
  Stock hand = yard("rack", 2100, 150, 0);
  hand.bought = false;
  hand.count = 1;
  const Plan plan = sound_plan(
      order_of({part(1000, 150), part(1000, 150)}, {yard("yard", 4000, 150, 2000), hand}, 3));
  REQUIRE(plan.boards.size() == 1);
  CHECK(plan.boards[0].stock == 1);
  CHECK(plan.totals.cost == 0);
  CHECK(plan.bounds.measure == Measure::square_mm);
}

TEST_CASE("a part too long for all stock is named with the board that would do") {
  Stock board = yard("board", 3000, 150, 900);
  board.end_trim = mm(10);
  board.edge_trim = mm(5);
  const Plan plan = sound_plan(order_of({part(2990, 100), part(500, 100)}, {board}, 3));
  REQUIRE(plan.unplaced.size() == 1);
  CHECK(plan.unplaced[0].want == 0);
  CHECK(plan.unplaced[0].why == Lack::size);
  CHECK(plan.unplaced[0].stock_length == mm(3010));
  CHECK(plan.unplaced[0].stock_width == mm(110));
  CHECK(plan.boards.size() == 1);
}

TEST_CASE("five wanted where two boards give two each: the count shows it") {
  Stock board = yard("board", 2100, 100, 900);
  board.count = 2;
  const std::vector<Want> five(5, part(1000, 100));
  const Plan plan = sound_plan(order_of(five, {board}, 3));
  CHECK(plan.unplaced.size() == 1);
  REQUIRE(plan.shortage);
  CHECK(plan.shortage->kind == Shortage::Kind::pieces);
  CHECK(plan.shortage->wanted == 5);
  CHECK(plan.shortage->at_most == 4);
}

TEST_CASE("a knot is cut away: 1000 on each side of it, and never across") {
  Stock board = yard("board", 2100, 100, 900);
  board.defects = {{mm(1010), mm(1060)}};
  const Plan plan = sound_plan(order_of({part(1000, 100), part(1000, 100)}, {board}, 3));
  CHECK(plan.boards.size() == 1);
  board.defects = {{mm(990), mm(1060)}};
  CHECK(sound_plan(order_of({part(1000, 100), part(1000, 100)}, {board}, 3)).boards.size() == 2);
}

TEST_CASE("grain keeps a part along the board; without it the part is turned") {
  Stock sheet = yard("sheet", 1000, 600, 900);
  const CuttingOrder kept = order_of({part(500, 800)}, {sheet}, 3);
  CHECK(sound_plan(kept).unplaced.size() == 1);
  sheet.grain = false;
  const Plan plan = sound_plan(order_of({part(500, 800)}, {sheet}, 3));
  REQUIRE(plan.boards.size() == 1);
  CHECK(plan.boards[0].cuts[0].turned);
}

TEST_CASE("pieces of a group come from one board, though others are as large") {
  std::vector<Want> wants(4, part(1000, 100));
  wants[0].group = "face";
  wants[3].group = "face";
  const Plan plan = sound_plan(order_of(wants, {yard("board", 2003, 100, 900)}, 3));
  REQUIRE(plan.boards.size() == 2);
  CHECK(plan.split_groups.empty());
  wants[1].group = "face";
  CHECK(sound_plan(order_of(wants, {yard("board", 2003, 100, 900)}, 3)).split_groups ==
        std::vector<std::string>{"face"});
}

TEST_CASE("the same order gives the same plan") {
  std::vector<Want> wants;
  for (std::int64_t index = 0; index < 25; ++index)
    wants.push_back(part(300 + 37 * (index % 11), 40 + 13 * (index % 5)));
  const CuttingOrder order =
      order_of(wants, {yard("a", 2400, 180, 900), yard("b", 3000, 150, 950)}, 3);
  const Plan one = sound_plan(order);
  const Plan two = plan_cutting(order);
  REQUIRE(one.boards.size() == two.boards.size());
  for (std::size_t board = 0; board < one.boards.size(); ++board) {
    REQUIRE(one.boards[board].cuts.size() == two.boards[board].cuts.size());
    for (std::size_t cut = 0; cut < one.boards[board].cuts.size(); ++cut)
      CHECK(one.boards[board].cuts[cut].spot == two.boards[board].cuts[cut].spot);
  }
}

TEST_CASE("a plan spoiled by hand is found out") {
  const CuttingOrder order =
      order_of({part(900, 100), part(800, 100)}, {yard("board", 3000, 100, 700)}, 4);
  const Plan plan = sound_plan(order);
  Plan moved = plan;
  moved.boards[0].cuts[0].spot.x += mm(1);
  CHECK_FALSE(faults_of(moved, order).empty());
  CHECK_FALSE(objections(moved, order).empty());
  Plan lost = plan;
  lost.boards[0].cuts.pop_back();
  CHECK_FALSE(faults_of(lost, order).empty());
  Plan dear = plan;
  dear.totals.cost += 1;
  CHECK_FALSE(faults_of(dear, order).empty());
  Plan short_step = plan;
  short_step.boards[0].steps.pop_back();
  CHECK_FALSE(faults_of(short_step, order).empty());
}

TEST_CASE("orders that break a rule are refused") {
  CHECK_THROWS_AS(plan_cutting(order_of({part(0, 10)}, {}, 3)), std::invalid_argument);
  CHECK_THROWS_AS(plan_cutting(order_of({part(10, 10)}, {yard("a", 5, 5, -1)}, 3)),
                  std::invalid_argument);
  CHECK_THROWS_AS(
      plan_cutting(order_of({part(10, 10)}, {yard("a", 50, 50, 1), yard("a", 60, 60, 1)}, 3)),
      std::invalid_argument);
}

TEST_CASE("310 sizes, each longer than half a board: a board each, and the bound knows it") {
  // By length alone 206 boards would do.
  std::vector<Want> wants;
  for (std::int64_t index = 0; index < 310; ++index)
    wants.push_back(part(510 + index, 100));
  const Plan plan = sound_plan(order_of(wants, {yard("board", 1000, 100, 900)}, 3));
  CHECK(plan.boards.size() == 310);
  CHECK(plan.bounds.proven);
  CHECK(plan.bounds.whole_boards == 900 * 207);
}

TEST_CASE("sizes put together are no larger, no fewer, and those nearest to each other") {
  std::vector<PartWays> parts;
  for (const std::int64_t length : {100, 101, 300, 302, 303})
    parts.push_back(
        {2, {{.length = length, .width = 50}, {.length = length, .width = 20, .pieces = 3}}});
  parts.push_back({1, {{.length = 90, .width = 10}}});
  const std::vector<PartWays> fewer = fewer_sizes(parts, 5);
  REQUIRE(fewer.size() == 3);
  CHECK(fewer[0].parts == 1);
  CHECK(fewer[0].ways.size() == 1);
  CHECK(fewer[1].parts == 4);
  CHECK(fewer[1].ways[0].length == 100);
  CHECK(fewer[1].ways[1].length == 100);
  CHECK(fewer[2].parts == 6);
  CHECK(fewer[2].ways[0].length == 300);
  CHECK(fewer_sizes(parts, 2).empty());
}

TEST_CASE("a panel of two wide strips or three narrow ones: the bound holds for both") {
  // Wide ones: one from each board of 100; narrow ones: two abreast, so two boards for three strips
  // and three boards for two such panels.
  WaysOrder order;
  order.stock = {{yard("board", 1000, 100, 900)}};
  order.parts = {{2, {{0, mm(1000), mm(60), 2}, {0, mm(1000), mm(48), 3}}}};
  order.saw.kerf = mm(4);
  CHECK(bounds_of_every_way(order).best == 3 * 900);
  order.parts.front().ways.pop_back();
  CHECK(bounds_of_every_way(order).best == 4 * 900);
}

TEST_CASE(
    "a part from either of two thicknesses costs what the cheaper one does, as far as it goes") {
  Stock thin = yard("thin", 1000, 100, 900);
  thin.count = 2;
  WaysOrder order;
  order.stock = {{thin}, {yard("thick", 1000, 100, 1500)}};
  order.parts = {{3, {{0, mm(1000), mm(60), 1}, {1, mm(1000), mm(60), 1}}}};
  CHECK(bounds_of_every_way(order).best == 2 * 900 + 1500);
}

TEST_CASE(
    "20 000 strips for 10 000 panels: seven from a board, each panel's from one as far as that "
    "goes") {
  // Seven of 100 and six blades of 4 are 724.
  std::vector<Want> wants(20'000, part(1000, 100));
  for (std::size_t index = 0; index < wants.size(); ++index)
    wants[index].group = "panel" + std::to_string(index / 2);
  const CuttingOrder order = order_of(wants, {yard("board", 1000, 724, 900)}, 4);
  const Plan plan = plan_cutting(order);
  CHECK(plan.boards.size() == 2858);
  CHECK(plan.bounds.proven);
  // Three whole panels a board; of the seventh strips two boards make one more.
  CHECK(plan.split_groups.size() <= 10'000 - 3 * 2857);
  CHECK(faults_of(plan, order).empty());
}
