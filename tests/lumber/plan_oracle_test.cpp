// The second opinion is itself put to the test: each fault made in a sound plan is seen.
#include "plan_oracle.h"

#include "catch.h"

using namespace haunch;
using namespace haunch::lumber;

namespace {

Length mm(std::int64_t whole) {
  return Length::from_mm(whole);
}

/// A board of 1000 x 100, ends trimmed by 10: parts of 400 and 500 with a blade of 3 after each, so
/// that 74 are left.
struct Planned {
  CuttingOrder order;
  Plan plan;

  Planned() {
    order.wants = {{.name = "a", .length = mm(400), .width = mm(100)},
                   {.name = "b", .length = mm(500), .width = mm(100)}};
    order.stock = {{.id = "board",
                    .length = mm(1000),
                    .width = mm(100),
                    .count = 1,
                    .bought = true,
                    .cost = 700,
                    .end_trim = mm(10),
                    .edge_trim = {}}};
    order.saw = {.kerf = mm(3), .offcut_length = mm(50), .offcut_width = mm(50)};
    plan = plan_cutting(order);
  }
  bool faulty() const { return !objections(plan, order).empty(); }
};

}  // namespace

TEST_CASE("Two parts and the offcut behind them fill a board to the millimetre") {
  const Planned it;
  REQUIRE_FALSE(it.faulty());
  REQUIRE(it.plan.boards.size() == 1);
  REQUIRE(it.plan.boards[0].offcuts.size() == 1);
  CHECK(it.plan.boards[0].offcuts[0].length == mm(74));
}

TEST_CASE("Each fault made in a sound plan is seen") {
  Planned it;
  BoardPlan& board = it.plan.boards[0];
  SECTION("a part cut twice, the other not at all") {
    board.cuts[1].want = board.cuts[0].want;
  }
  SECTION("a part a millimetre too near its neighbour") {
    board.cuts[1].spot.x = board.cuts[1].spot.x - mm(1);
  }
  SECTION("a part in the trim") {
    board.cuts[0].spot.x = board.cuts[0].spot.x - mm(1);
  }
  SECTION("a part smaller than it is wanted") {
    board.cuts[0].spot.width = mm(99);
  }
  SECTION("a part on a knot") {
    it.order.stock[0].defects = {{mm(300), mm(320)}};
  }
  SECTION("a part across the grain") {
    board.cuts[0].turned = true;
  }
  SECTION("a step left out") {
    board.steps.pop_back();
  }
  SECTION("steps in another order") {
    std::swap(board.steps.front(), board.steps.back());
  }
  SECTION("a cut thinner than the blade") {
    board.steps.back().to = board.steps.back().from;
  }
  SECTION("an offcut that the steps do not leave") {
    board.offcuts[0].length = mm(80);
  }
  SECTION("a second board of a stock of one") {
    board.copy = 1;
  }
  SECTION("the same board again") {
    it.plan.boards.push_back(board);
  }
  SECTION("dust that does not add up") {
    it.plan.totals.kerf = it.plan.totals.trim;
  }
  SECTION("a cost that does not add up") {
    it.plan.totals.cost += 1;
  }
  SECTION("a bound above the plan") {
    it.plan.bounds.best = it.plan.bounds.plan + 1;
  }
  CHECK(it.faulty());
}
