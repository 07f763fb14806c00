// Fittings of the shop's list in the packs that they are bought in.
#include "bought.h"

#include "priced.h"

namespace haunch {
namespace {

using namespace test;

BoughtFitting butt(int pack) {
  BoughtFitting its;
  its.name = "butt 75";
  its.pack = pack;
  return its;
}

TEST_CASE("Of 7 in packs of 2 there are 4") {
  CHECK(BoughtLine{butt(2), 7}.packs() == 4);
  CHECK(BoughtLine{butt(2), 8}.packs() == 4);
  CHECK(BoughtLine{butt(1), 7}.packs() == 7);
  CHECK(BoughtLine{butt(100), 1}.packs() == 1);
}

TEST_CASE("Lines of one fitting come together before they are rounded to packs") {
  std::vector<BoughtLine> all{{butt(2), 3}};
  add_bought(all, {{butt(2), 3}});
  REQUIRE(all.size() == 1);
  CHECK(all.front().packs() == 3);
}

TEST_CASE("Hinges count on the leaf, for all items") {
  const Assembly door = wood(house_mm(R"("hinges": {"number": 3})"));
  const auto all = bought_for(door, {{FittingUse::hinges, butt(2)}}, 3);
  REQUIRE(all.size() == 1);
  CHECK(all.front().number == 9);
  CHECK(all.front().packs() == 5);
  CHECK(bought_for(door, {{FittingUse::lock, butt(2)}}, 3).empty());
}

TEST_CASE("What takes ten days is ordered ten days before the work is due") {
  BoughtFitting its = butt(2);
  CHECK_FALSE(order_by(its, "2031-05-17"));
  its.lead_days = 10;
  CHECK(order_by(its, "2031-05-17") == "2031-05-07");
  CHECK_FALSE(order_by(its, ""));
}

TEST_CASE("Where only the front is coated, a board has its back less") {
  Assembly wood;
  Piece board;
  board.blank = {mm(100), mm(50), mm(20)};
  wood.pieces = {board};
  CHECK(lumber::square_mm(seen_surface(wood, FinishedFaces::front)) ==
        lumber::square_mm(seen_surface(wood)) - 100 * 50);
}

}  // namespace
}  // namespace haunch
