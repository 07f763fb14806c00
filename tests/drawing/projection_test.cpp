// What is seen of wood, by hand.
#include "projection.h"

#include "../setups/examples.h"
#include "views.h"

namespace haunch::test {
namespace {

LineView front_of(const Assembly& assembly) {
  return view_of(drawn_of(assembly), sight_from(ViewedFrom::front), HiddenLines::drawn);
}

LineView from_left(const Assembly& assembly) {
  return view_of(drawn_of(assembly), sight_from(ViewedFrom::left), HiddenLines::drawn);
}

}  // namespace

TEST_CASE("A board is four lines from each side") {
  const auto drawn = drawn_of(of_pieces({board_at("A", mm3(10, 20, 30), mm3(300, 100, 20))}));
  const auto seen = [&](ViewedFrom from) {
    const LineView view = view_of(drawn, sight_from(from), HiddenLines::drawn);
    CHECK(lines(view, LineOf::hidden).empty());
    return lines(view, LineOf::seen);
  };
  CHECK(seen(ViewedFrom::front) ==
        Words{"10,120 310,120", "10,20 10,120", "10,20 310,20", "310,20 310,120"});
  // From behind its right end is at the left; from its left end its front is at the right.
  CHECK(seen(ViewedFrom::back) ==
        Words{"-10,20 -10,120", "-310,120 -10,120", "-310,20 -10,20", "-310,20 -310,120"});
  CHECK(seen(ViewedFrom::left) ==
        Words{"-30,20 -30,120", "-50,120 -30,120", "-50,20 -30,20", "-50,20 -50,120"});
  CHECK(seen(ViewedFrom::right) ==
        Words{"30,120 50,120", "30,20 30,120", "30,20 50,20", "50,20 50,120"});
  CHECK(seen(ViewedFrom::above) ==
        Words{"10,30 10,50", "10,30 310,30", "10,50 310,50", "310,30 310,50"});
  CHECK(seen(ViewedFrom::below) ==
        Words{"10,-30 310,-30", "10,-50 10,-30", "10,-50 310,-50", "310,-50 310,-30"});
}

TEST_CASE("A board before another hides what lies behind it, and no more") {
  const LineView view = front_of(of_pieces({board_at("A", mm3(0, 0, 0), mm3(100, 50, 20)),
                                            board_at("B", mm3(60, 20, 30), mm3(100, 50, 20))}));
  CHECK(lines(view, LineOf::seen) == Words{"0,0 0,50", "0,0 100,0", "0,50 100,50", "100,0 100,50",
                                           "100,20 160,20", "160,20 160,70", "60,50 60,70",
                                           "60,70 160,70"});
  CHECK(lines(view, LineOf::hidden) == Words{"60,20 100,20", "60,20 60,50"});
}

TEST_CASE("Of two boards flush with each other the joint is one line") {
  const LineView view = front_of(of_pieces({board_at("A", mm3(0, 0, 0), mm3(100, 50, 20)),
                                            board_at("B", mm3(100, 0, 0), mm3(80, 50, 20))}));
  CHECK(lines(view, LineOf::seen) == Words{"0,0 0,50", "0,0 100,0", "0,50 100,50", "100,0 100,50",
                                           "100,0 180,0", "100,50 180,50", "180,0 180,50"});
  CHECK(lines(view, LineOf::hidden).empty());
}

TEST_CASE("Nothing is seen through the crack between two boards, nor between two blocks of one") {
  // The board behind ends where the two before it meet.
  const LineView view = front_of(of_pieces({board_at("A", mm3(0, 0, 0), mm3(100, 50, 20)),
                                            board_at("B", mm3(100, 0, 5), mm3(100, 50, 20)),
                                            board_at("C", mm3(100, 10, 40), mm3(20, 30, 20))}));
  CHECK(lines(view, LineOf::hidden) == Words{"100,10 120,10", "100,40 120,40", "120,10 120,40"});
  // The mortise behind divides the board into blocks along the line of C.
  Piece board = board_at("A", mm3(0, 0, 0), mm3(200, 50, 20));
  board.features.push_back(cut_out(box(100, 15, 10, 150, 35, 20)));
  const LineView one =
      front_of(of_pieces({board, board_at("C", mm3(100, 5, 40), mm3(70, 40, 20))}));
  CHECK(lines(one, LineOf::seen) == Words{"0,0 0,50", "0,0 200,0", "0,50 200,50", "200,0 200,50"});
  // Where the mortise and C end in one line, it is all C's.
  CHECK(lines(one, LineOf::hidden) == Words{"100,15 150,15", "100,35 150,35", "100,45 170,45",
                                            "100,5 100,45", "100,5 170,5", "150,15 150,35",
                                            "170,5 170,45"});
}

TEST_CASE("A mortise is seen from the edge of its stile, and dashed from the front") {
  // A stile of 90 x 40, 300 long, in whose right edge a mortise of 60 x 12 is cut 50 deep.
  Piece stile = board_at("A", mm3(0, 0, 0), mm3(300, 90, 40));
  stile.place.axes = {Axis::y, Axis::x, Axis::z};
  stile.features.push_back(cut_out(box(100, 40, 14, 160, 90, 26)));
  const auto drawn = drawn_of(of_pieces({stile}));
  const LineView edge = view_of(drawn, sight_from(ViewedFrom::right), HiddenLines::drawn);
  CHECK(lines(edge, LineOf::seen) == Words{"0,0 0,300", "0,0 40,0", "0,300 40,300", "14,100 14,160",
                                           "14,100 26,100", "14,160 26,160", "26,100 26,160",
                                           "40,0 40,300"});
  CHECK(lines(edge, LineOf::hidden).empty());
  const LineView front = view_of(drawn, sight_from(ViewedFrom::front), HiddenLines::drawn);
  CHECK(lines(front, LineOf::hidden) == Words{"40,100 40,160", "40,100 90,100", "40,160 90,160"});
}

TEST_CASE("A tenon in its mortise is dashed, and its shoulder line is seen") {
  Piece stile = board_at("A", mm3(0, 0, 0), mm3(300, 90, 40));
  stile.place.axes = {Axis::y, Axis::x, Axis::z};
  stile.features.push_back(cut_out(box(100, 40, 14, 160, 90, 26)));
  Piece rail = board_at("B", mm3(42, 100, 0), mm3(200, 60, 40));
  rail.features.push_back(cut_out(box(0, 0, 0, 48, 60, 14)));
  rail.features.push_back(cut_out(box(0, 0, 26, 48, 60, 40)));
  const LineView view = front_of(of_pieces({stile, rail}));
  CHECK(lines(view, LineOf::seen) == Words{"0,0 0,300", "0,0 90,0", "0,300 90,300",
                                           "242,100 242,160", "90,0 90,300", "90,100 242,100",
                                           "90,160 242,160"});
  // The mortise is 2 mm deeper than the tenon is long; what both have is told as the tenon's.
  CHECK(lines(view, LineOf::hidden) == Words{"40,100 40,160", "40,100 42,100", "40,160 42,160",
                                             "42,100 42,160", "42,100 90,100", "42,160 90,160"});
  const auto is_tenon = [](const ViewLine& it) { return it.of == LineOf::hidden && it.piece == 1; };
  CHECK(std::count_if(view.lines.begin(), view.lines.end(), is_tenon) == 3);
}

TEST_CASE("A hole is a circle where it is looked into, and two lines from the side") {
  const Assembly shelves = example("recipe-shelves.json");
  Piece side = piece(shelves, "left side");
  const auto is_pins = [](const Feature& it) { return it.kind == FeatureKind::shelf_pin_holes; };
  std::erase_if(side.features, [&](const Feature& it) { return !is_pins(it); });
  side.features.resize(1);
  side.features.front().prisms.resize(1);
  const std::size_t corners = side.features.front().prisms.front().outline.size();
  const LineView into =
      view_of(drawn_of(of_pieces({side})), sight_from(ViewedFrom::right), HiddenLines::drawn);
  CHECK(lines(into, LineOf::seen).size() == 4 + corners);
  CHECK(lines(into, LineOf::hidden).empty());
  const LineView front = front_of(of_pieces({side}));
  CHECK(lines(front, LineOf::seen).size() == 4);
  CHECK(lines(front, LineOf::hidden).size() == 3);  // and its bottom
}

TEST_CASE("A chamfer is drawn, the facets of an arch are not") {
  Piece post = board_at("A", mm3(0, 0, 0), mm3(300, 60, 60));
  Feature chamfer;
  chamfer.prisms.push_back({0, mm(0), mm(300), {{mm(0), mm(0)}, {mm(8), mm(0)}, {mm(0), mm(8)}}});
  post.features.push_back(chamfer);
  CHECK(lines(front_of(of_pieces({post})), LineOf::seen).size() == 5);
  const Assembly hall = example("bake-hall.json");
  const auto above = view_of(drawn_of(of_pieces({piece(hall, "top rail")})),
                             sight_from(ViewedFrom::above), HiddenLines::left_out);
  // From above: two ends with their shoulders and tenons, and long edges between.
  CHECK(above.lines.size() < 30);
}

TEST_CASE("On a slanted view lengths along all three axes are true") {
  for (const bool right : {true, false})
    for (const bool up : {true, false})
      for (const bool front : {true, false}) {
        const Sight sight = slanted_sight({right, up, front});
        const ViewSpot zero = seen_at(sight, mm3(0, 0, 0));
        for (const Triple& end : {mm3(70, 0, 0), mm3(0, 70, 0), mm3(0, 0, 70)}) {
          const ViewSpot there = seen_at(sight, end);
          CHECK(std::hypot(there.u - zero.u, there.v - zero.v) == Approx(70));
        }
        // Three faces are seen, with nine edges.
        const LineView view =
            view_of(drawn_of(of_pieces({board_at("A", mm3(0, 0, 0), mm3(300, 100, 20))})), sight,
                    HiddenLines::drawn);
        CHECK(lines(view, LineOf::seen).size() == 9);
        CHECK(lines(view, LineOf::hidden).size() == 3);
      }
}

TEST_CASE("What is moved is drawn elsewhere, no larger and no smaller") {
  auto drawn = drawn_of(example("side-door.json"), 0);
  const auto before = view_of({&drawn, 1}, sight_from(ViewedFrom::front), HiddenLines::drawn);
  move_by(drawn, mm3(-100, 30, 500));
  const auto after = view_of({&drawn, 1}, sight_from(ViewedFrom::front), HiddenLines::drawn);
  REQUIRE(before.lines.size() == after.lines.size());
  CHECK(extent_of(after)->low.u == Approx(extent_of(before)->low.u - 100));
  CHECK(extent_of(after)->high.v == Approx(extent_of(before)->high.v + 30));
  CHECK(from_left(example("side-door.json")).lines.size() > 4);
}

}  // namespace haunch::test
