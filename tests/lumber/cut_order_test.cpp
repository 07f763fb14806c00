#include "cut_order.h"

#include "catch.h"
#include "orders.h"

using namespace haunch;
using namespace haunch::lumber;

namespace {

std::vector<StepReason> reasons(const BoardPlan& board) {
  std::vector<StepReason> found;
  for (const Step& step : board.steps)
    found.push_back(step.reason);
  return found;
}

}  // namespace

TEST_CASE("trim comes off first, then the knot, then sections, strips and parts") {
  Stock board = yard("ash", 3000, 200, 900);
  board.end_trim = mm(10);
  board.edge_trim = mm(5);
  board.defects = {{mm(1000), mm(1100)}};
  const Plan plan = plan_cutting(order_of({part(900, 150), part(1800, 150)}, {board}, 3));
  REQUIRE(plan.boards.size() == 1);
  const auto order = reasons(plan.boards[0]);
  CHECK(std::is_sorted(order.begin(), order.begin() + 5));
  CHECK(order.front() == StepReason::trim);
  CHECK(std::count(order.begin(), order.end(), StepReason::trim) == 4);
  CHECK(std::count(order.begin(), order.end(), StepReason::defect) == 2);
}

TEST_CASE("all that a board is goes somewhere, to the last square step") {
  Stock board = yard("ash", 3000, 200, 900);
  board.end_trim = mm(10);
  const CuttingOrder order = order_of({part(900, 150), part(1800, 150)}, {board}, 3);
  const Plan plan = plan_cutting(order);
  const Totals sum = totals_of(plan.boards, order);
  CHECK(sum.area_used == area_of(mm(3000), mm(200)));
  CHECK(sum.parts == area_of(mm(900 + 1800), mm(150)));
  CHECK(sum.area_used == sum.parts + sum.kerf + sum.trim + sum.offcuts + sum.scrap);
  CHECK(sum.cost == 900);
  CHECK(sum.boards_bought == 1);
}

TEST_CASE("boards and parts are handed out in their order, each once") {
  Stock first = yard("first", 3000, 200, 900);
  first.count = 1;
  Stock second = yard("second", 3000, 200, 900);
  second.count = 5;
  const CuttingOrder order = order_of({part(500, 100), part(500, 100)}, {first, second}, 3);
  const Model model = model_of(order);
  Supply supply(model, {{1, 0}});
  CHECK(supply.next_board(0).stock == 0);
  CHECK(supply.next_board(0).stock == 1);
  CHECK(supply.next_board(0).copy == 1);
  CHECK(supply.next_want(0) == 1);
  CHECK(supply.wants_left() == std::vector<std::size_t>{0});
}
