// Offcuts in large pieces, useless cuts left out, groups brought to one board.
#include "cutting.h"
#include "vocabulary.h"

namespace haunch::test {
namespace {

using namespace haunch::lumber;

Stock board(const std::string& id, Length length, Length width) {
  Stock stock;
  stock.id = id;
  stock.length = length;
  stock.width = width;
  stock.count = 1;
  return stock;
}

CuttingOrder order_of(std::vector<Want> wants, std::vector<Stock> stock) {
  CuttingOrder order;
  order.wants = std::move(wants);
  order.stock = std::move(stock);
  order.saw = {mm(3), mm(300), mm(50), true};
  return order;
}

TEST_CASE("two equal parts leave one long offcut beside them, not two short ones") {
  // 2 x 1000 + 3 of 2010; 200 - 110 - 3 = 87 are left beside, over the whole length when ripped
  // first.
  const Plan plan = plan_cutting(order_of({{"A", mm(1000), mm(110)}, {"B", mm(1000), mm(110)}},
                                          {board("r", mm(2010), mm(200))}));
  REQUIRE(plan.boards.size() == 1);
  REQUIRE(plan.boards[0].offcuts.size() == 1);
  CHECK(plan.boards[0].offcuts[0].length == mm(2010));
  CHECK(plan.boards[0].offcuts[0].width == mm(87));
}

TEST_CASE("pieces beside parts of one width are kept in one length, beside others in another") {
  // 1000 and 500 of 140 wide, 400 and 300 of 120: 57 beside the first two over 1503, 77 beside the
  // others over 703. All wide ones in one strip, narrow ones in another, would not fit across 200.
  CuttingOrder order = order_of({{"A", mm(1000), mm(140)},
                                 {"B", mm(400), mm(120)},
                                 {"C", mm(500), mm(140)},
                                 {"D", mm(300), mm(120)}},
                                {board("r", mm(2209), mm(200))});
  const Plan plan = plan_cutting(order);
  REQUIRE(plan.boards.size() == 1);
  REQUIRE(plan.boards[0].offcuts.size() == 2);
  Length wide, narrow;
  for (const lumber::Spot& offcut : plan.boards[0].offcuts)
    (offcut.width == mm(57) ? narrow : wide) = offcut.length;
  CHECK(narrow == mm(1503));
  CHECK(wide == mm(703));
}

TEST_CASE("a saw that crosscuts first keeps to it, whatever the offcuts") {
  CuttingOrder order = order_of({{"A", mm(1000), mm(110)}, {"B", mm(1000), mm(110)}},
                                {board("r", mm(2010), mm(200))});
  order.stages = Stages::crosscut_rip_crosscut;
  const Plan plan = plan_cutting(order);
  for (const lumber::Step& step : plan.boards[0].steps)
    CHECK((step.reason != StepReason::section || step.kind == StepKind::crosscut));
}

TEST_CASE("what lies behind a defect is not cut clean when it is too short to keep") {
  // 1000 of 1500, a defect from 1200 to 1300: behind it are 200, which nobody keeps.
  Stock stock = board("r", mm(1500), mm(100));
  stock.defects = {{mm(1200), mm(1300)}};
  const Plan plan = plan_cutting(order_of({{"A", mm(1000), mm(100)}}, {stock}));
  REQUIRE(plan.boards.size() == 1);
  CHECK(plan.boards[0].steps.size() == 2);  // at 1200, at 1000
  CHECK(plan.boards[0].offcuts.empty());
}

TEST_CASE("strips of three panels come from a board each where there are three boards for them") {
  // Boards for 4, 4 and 2 strips of 500; panels of 4, 4 and 2.
  std::vector<Want> wants;
  for (const auto& [group, count] :
       std::vector<std::pair<std::string, int>>{{"short", 2}, {"one", 4}, {"other", 4}})
    for (int i = 0; i < count; ++i)
      wants.push_back({group, mm(500), mm(90), false, group});
  const Plan plan =
      plan_cutting(order_of(wants, {board("a", mm(1010), mm(190)), board("b", mm(510), mm(190)),
                                    board("c", mm(1010), mm(190))}));
  CHECK(plan.unplaced.empty());
  CHECK(plan.boards.size() == 3);
  CHECK(plan.split_groups.empty());
}

TEST_CASE("panels of unlike lengths come from a board each where the boards of the plan allow it") {
  // 2060 holds two of 1020 or three of 589, two abreast; both panels of four strips fit one board
  // only in halves, so each has its own.
  std::vector<Want> wants;
  for (const auto& [group, length] :
       std::vector<std::pair<std::string, int>>{{"K", 589}, {"I", 1020}, {"J", 589}})
    for (int i = 0; i < 4; ++i)
      wants.push_back({group, mm(length), mm(88), false, group});
  const Plan plan =
      plan_cutting(order_of(wants, {board("a", mm(2060), mm(190)), board("b", mm(2400), mm(190))}));
  CHECK(plan.unplaced.empty());
  CHECK(plan.split_groups.empty());
}

}  // namespace
}  // namespace haunch::test
