// From the opening to the leaf, its stiles and its rails.
#include "vocabulary.h"

namespace haunch::test {

TEST_CASE("The leaf is the opening less the clearance at each side") {
  // 930 - 2 x 3 = 924; 2060 - 2 x 3 = 2054.
  const Assembly leaf = wood(house_mm(R"("clearance": 3, "thickness": 44)"));
  CHECK(leaf.size == Triple{mm(924), mm(2054), mm(44)});
  REQUIRE(fit_in_opening(leaf) != nullptr);
  CHECK(opening_of(leaf).width == mm(930));
  CHECK(opening_of(leaf).height == mm(2060));
  CHECK(opening_of(leaf).room.foot == mm(3));
}

TEST_CASE("Each side may have a clearance of its own") {
  // 930 - 2 - 4 = 924; 2060 - 5 - 12 = 2043.
  const Worked worked =
      work(house_mm(R"("clearance": {"left": 2, "right": 4, "head": 5, "foot": 12})"));
  CHECK(worked.assembly.size[0] == mm(924));
  CHECK(worked.assembly.size[1] == mm(2043));
  CHECK(opening_of(worked.assembly).room.left == mm(2));
  CHECK(opening_of(worked.assembly).room.right == mm(4));
  CHECK(opening_of(worked.assembly).room.head == mm(5));
  CHECK(opening_of(worked.assembly).room.foot == mm(12));
  CHECK(assumed_under(worked, "clearance").empty());
  CHECK(assumed_under(worked, "clearance.left").empty());
}

TEST_CASE("A side without a clearance has the usual one, and that is said for each") {
  // House door, 3 mm: 930 - 6 = 924; 2060 - 3 - 10 = 2047.
  const Worked worked = work(house_mm(R"("clearance": {"foot": 10})"));
  CHECK(worked.assembly.size[0] == mm(924));
  CHECK(worked.assembly.size[1] == mm(2047));
  for (const char* side : {"clearance.left", "clearance.right", "clearance.head"})
    CHECK(assumed(worked, side) == std::vector{mm(3)});
  CHECK(assumed_under(worked, "clearance.foot").empty());
}

TEST_CASE("A clearance of 0 makes the leaf as large as the opening") {
  const Assembly leaf = wood(house_mm(R"("clearance": 0)"));
  CHECK(leaf.size[0] == mm(930));
  CHECK(leaf.size[1] == mm(2060));
}

TEST_CASE("A clearance may be written in another unit than the rest") {
  // 930 - 2 x 3.175.
  CHECK(wood(house_mm(R"("clearance": "1/8 in")")).size[0] == mm(923.65));
}

TEST_CASE("Clearances that leave no leaf are refused") {
  CHECK(refused_at(house_mm(R"("clearance": 465)")) == "/clearance");
}

TEST_CASE("Stiles run the full height, and rails between them with a tenon at each end") {
  // Between the stiles 924 - 2 x 118 = 688, with two tenons of 76: 840, from 118 - 76 = 42 on.
  const Assembly leaf = wood(house_mm(R"("stile_width": 118, "tenon_depth": 76)"));
  const Piece left = piece(leaf, "left stile");
  CHECK(left.blank == Triple{mm(2054), mm(118), mm(44)});
  CHECK(left.place.origin == Triple{});
  CHECK(left.place.axes == std::array{Axis::y, Axis::x, Axis::z});
  CHECK(piece(leaf, "right stile").place.origin == Triple{mm(806), Length(), Length()});
  const Piece rail = piece(leaf, "lock rail");
  CHECK(rail.blank == Triple{mm(840), mm(195), mm(44)});
  CHECK(rail.place.origin[0] == mm(42));
  CHECK(rail.place.axes == std::array{Axis::x, Axis::y, Axis::z});
}

TEST_CASE("Stiles may differ in width") {
  // Between them 924 - 120 - 100 = 704; tenons 67, two thirds of the narrower; rails 838 from 53
  // on.
  const Worked worked = work(house_mm(R"("stile_width": {"left": 120, "right": 100})"));
  const Assembly& leaf = worked.assembly;
  CHECK(piece(leaf, "left stile").blank[1] == mm(120));
  CHECK(piece(leaf, "right stile").blank[1] == mm(100));
  CHECK(piece(leaf, "right stile").place.origin[0] == mm(824));
  CHECK(piece(leaf, "top rail").blank[0] == mm(838));
  CHECK(piece(leaf, "top rail").place.origin[0] == mm(53));
  // The mortises are sunk from each stile's own sight edge: 67 + 2 deep.
  CHECK(cuts(piece(leaf, "left stile"), "mortise").front().low[1] == mm(51));
  CHECK(cuts(piece(leaf, "right stile"), "mortise").front().high[1] == mm(69));
  CHECK(assumed_under(worked, "stile_width.left").empty());
}

TEST_CASE("A stile whose width is not given has the usual one") {
  const Worked worked = work(house_mm(R"("stile_width": {"left": 120})"));
  CHECK(piece(worked.assembly, "right stile").blank[1] == mm(100));
  CHECK(assumed(worked, "stile_width.right") == std::vector{mm(100)});
  CHECK(assumed_under(worked, "stile_width").empty());
}

TEST_CASE("Stiles that meet are refused") {
  CHECK(refused_at(house_mm(R"("stile_width": 462)")) == "/stile_width");
}

TEST_CASE("Horns are for the saw: no part of the stile, and on stiles alone") {
  const Assembly leaf = wood(house_mm(R"("horn": 30)"));
  CHECK(piece(leaf, "left stile").horn == mm(30));
  CHECK(piece(leaf, "right stile").horn == mm(30));
  CHECK(piece(leaf, "left stile").blank[0] == mm(2054));
  CHECK(piece(leaf, "top rail").horn == Length());
  CHECK(piece(leaf, "panel, tier 1").horn == Length());
}

TEST_CASE("A piece has its own mark, and what there is but one of no number") {
  const Assembly leaf = wood(house_mm(R"("rail_widths": [100, 120], "panels": 2)"));
  std::vector<std::string> named;
  for (const Piece& each : leaf.pieces)
    named.push_back(each.mark + " " + each.name);
  CHECK(named == std::vector<std::string>{"A left stile", "B right stile", "C top rail",
                                          "D bottom rail", "E muntin", "F panel 1", "G panel 2"});
}

}  // namespace haunch::test
