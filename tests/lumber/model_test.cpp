#include "model.h"

#include "catch.h"
#include "orders.h"

using namespace haunch;
using namespace haunch::lumber;

TEST_CASE("parts are a kerf longer and wider, a board's clear wood too") {
  Stock board = yard("ash", 3000, 200, 900);
  board.end_trim = mm(10);
  board.edge_trim = mm(5);
  const Model model = model_of(order_of({part(500, 100)}, {board}, 3));
  REQUIRE(model.parts.size() == 1);
  CHECK(model.parts[0].length == mm(503).steps());
  CHECK(model.parts[0].width == mm(103).steps());
  REQUIRE(model.boards.size() == 1);
  CHECK(model.boards[0].spans == std::vector<Span>{{mm(10).steps(), mm(2983).steps()}});
  CHECK(model.boards[0].start_y == mm(5).steps());
  CHECK(model.boards[0].clear_width == mm(193).steps());
}

TEST_CASE("a knot parts a board into two spans") {
  Stock board = yard("ash", 3000, 200, 900);
  board.defects = {{mm(1000), mm(1100)}};
  const Model model = model_of(order_of({part(500, 100)}, {board}, 3));
  CHECK(model.boards[0].spans ==
        std::vector<Span>{{0, mm(1003).steps()}, {mm(1100).steps(), mm(1903).steps()}});
}

TEST_CASE("equal parts are one kind, equal boards one kind from two sources") {
  Stock first = yard("first", 3000, 200, 900);
  first.count = 1;
  Stock second = yard("second", 3000, 200, 900);
  second.count = 3;
  const Model model =
      model_of(order_of({part(500, 100), part(700, 80), part(500, 100)}, {first, second}, 3));
  REQUIRE(model.parts.size() == 2);
  CHECK(model.demand() == 3);
  REQUIRE(model.boards.size() == 1);
  CHECK(model.boards[0].sources.size() == 2);
  CHECK(model.boards[0].limit == 3);  // no more than there are parts
}

TEST_CASE("what no board holds is set apart, and a board that holds nothing left out") {
  const Model model =
      model_of(order_of({part(3500, 100), part(500, 100)},
                        {yard("short", 400, 200, 100), yard("long", 3000, 200, 900)}, 3));
  CHECK(model.too_big == std::vector<std::size_t>{0});
  REQUIRE(model.boards.size() == 1);
  CHECK(model.boards[0].length == mm(3000));
}

TEST_CASE("parts wider than half of every board lie in one row") {
  const Stock board = yard("ash", 3000, 200, 900);
  CHECK(model_of(order_of({part(500, 101), part(500, 100)}, {board}, 3)).single_row);
  CHECK_FALSE(model_of(order_of({part(500, 98), part(500, 98)}, {board}, 3)).single_row);
}

TEST_CASE("only what may be turned, or lies on a board without grain, lies across") {
  const Model model = model_of(order_of({part(500, 100)}, {yard("ash", 3000, 600, 900)}, 3));
  PartKind panel = model.parts[0];
  BoardKind board = model.boards[0];
  CHECK(fits(panel, false, board));
  CHECK_FALSE(fits(panel, true, board));
  panel.turnable = true;
  CHECK(fits(panel, true, board));
  panel.turnable = false;
  board.grain = false;
  CHECK(fits(panel, true, board));
  board.clear_width = mm(502).steps();
  CHECK_FALSE(fits(panel, true, board));
}
