// Wood cut through, by hand.
#include "section.h"

#include "views.h"

namespace haunch::test {
namespace {

/// A stile, 300 long and 90 x 40 thick, with a groove of 12 x 10 in its right edge, in which a
/// panel of 10 mm stands 8 deep. Seen from above its front is below.
Assembly grooved() {
  Piece stile = board_at("A", mm3(0, 0, 0), mm3(300, 90, 40));
  stile.place.axes = {Axis::y, Axis::x, Axis::z};
  stile.features.push_back(cut_out(box(0, 80, 14, 300, 90, 26)));
  Piece panel = board_at("B", mm3(82, 0, 15), mm3(300, 200, 10));
  panel.place.axes = {Axis::y, Axis::x, Axis::z};
  return of_pieces({stile, panel});
}

CutAway level_cut(double at, std::optional<Box> region = {}) {
  return {{Axis::y, mm(at), false}, region};
}

}  // namespace

TEST_CASE("A section through a groove with its panel") {
  const LineView view = section_of(drawn_of(grooved()), level_cut(150));
  REQUIRE(view.areas.size() == 2);
  CHECK(area_of(view.areas[0]) == Approx(90 * 40 - 12 * 10));
  CHECK(area_of(view.areas[1]) == Approx(200 * 10));
  CHECK_FALSE(view.areas[0].grain);
  CHECK(lines(view, LineOf::seen).empty());
  CHECK(lines(view, LineOf::cut) == Words{"0,0 0,40", "0,0 90,0", "0,40 90,40", "282,15 282,25",
                                          "80,14 80,26", "80,14 90,14", "80,26 90,26",
                                          "82,15 282,15", "82,15 82,25", "82,25 282,25",
                                          "90,0 90,14", "90,26 90,40"});
}

TEST_CASE("Grain runs along a section, or at the viewer") {
  Assembly all = grooved();
  const CutAway upright{{Axis::z, mm(20), true}, {}};
  LineView view = section_of(drawn_of(all), upright);
  REQUIRE(view.areas.size() == 2);
  CHECK(view.areas[0].grain == ViewSpot{0, 1});
  all.pieces[1].matter = Matter::board;
  view = section_of(drawn_of(all), upright);
  CHECK_FALSE(view.areas[1].grain);
}

TEST_CASE("Within a region wood breaks off where it goes on") {
  // From the groove's bottom on, 100 mm wide: the stile ends at its edge, the panel goes on.
  const LineView view =
      section_of(drawn_of(grooved()), level_cut(150, box(60, 0, -10, 120, 300, 50)));
  CHECK(lines(view, LineOf::broken) == Words{"120,15 120,25", "60,0 60,40"});
  REQUIRE(view.areas.size() == 2);
  CHECK(area_of(view.areas[0]) == Approx(30 * 40 - 12 * 10));
  CHECK(area_of(view.areas[1]) == Approx(38 * 10));
  CHECK(lines(view, LineOf::seen).empty());
}

TEST_CASE("What stands before the plane is taken away, what lies beyond it is seen") {
  Piece stile = board_at("A", mm3(0, 0, 0), mm3(300, 90, 40));
  stile.place.axes = {Axis::y, Axis::x, Axis::z};
  const Piece low = board_at("B", mm3(90, 20, 0), mm3(100, 60, 40));
  const Piece high = board_at("C", mm3(90, 220, 0), mm3(100, 60, 40));
  const LineView view = section_of(drawn_of(of_pieces({stile, low, high})), level_cut(150));
  REQUIRE(view.areas.size() == 1);
  CHECK(view.areas[0].piece == 0);
  CHECK(lines(view, LineOf::seen) == Words{"190,0 190,40", "90,0 190,0", "90,40 190,40"});
}

TEST_CASE("Where the plane lies in a face the wood beyond it is cut") {
  // Two boards that touch in the plane, one on the other.
  const Assembly all = of_pieces({board_at("A", mm3(0, 0, 0), mm3(100, 50, 20)),
                                  board_at("B", mm3(0, 50, 0), mm3(100, 50, 20))});
  const LineView down = section_of(drawn_of(all), {{Axis::y, mm(50), false}, {}});
  REQUIRE(down.areas.size() == 1);
  CHECK(down.areas[0].piece == 0);
  const LineView up = section_of(drawn_of(all), {{Axis::y, mm(50), true}, {}});
  REQUIRE(up.areas.size() == 1);
  CHECK(up.areas[0].piece == 1);
  CHECK(area_of(up.areas[0]) == Approx(100 * 20));
}

TEST_CASE("A hole in cut wood is a loop of its own") {
  Piece board = board_at("A", mm3(0, 0, 0), mm3(100, 50, 20));
  board.features.push_back(cut_out(box(20, 10, 0, 40, 30, 20)));
  const LineView view = section_of(drawn_of(of_pieces({board})), {{Axis::z, mm(10), true}, {}});
  REQUIRE(view.areas.size() == 1);
  CHECK(view.areas[0].loops.size() == 2);
  CHECK(area_of(view.areas[0]) == Approx(100 * 50 - 20 * 20));
}

TEST_CASE("Wood too thin for a shell is drawn by its blocks") {
  // The last 10 steps of a wedge that is 20 mm long and 1 mm high: nowhere as high as one step.
  Piece wedge = board_at("A", mm3(0, 0, 0), mm3(20, 1, 5));
  Feature slope;
  slope.prisms.push_back({2, mm(0), mm(5), {{mm(20), mm(0)}, {mm(20), mm(1)}, {mm(0), mm(1)}}});
  wedge.features.push_back(slope);
  const DrawnWood drawn = drawn_of(of_pieces({wedge}), 0);
  REQUIRE(drawn.shell);
  Box tip = box(0, -1, -1, 21, 2, 6);
  tip.low[0] = mm(20) - Length::from_steps(4);
  const auto part = within(drawn, tip);
  REQUIRE(part);
  CHECK_FALSE(part->shell);
  CHECK_FALSE(part->edges.empty());
  const LineView view = section_of({&drawn, 1}, {{Axis::z, mm(2), true}, tip});
  for (const CutArea& area : view.areas)
    CHECK(area_of(area) < 1e-6);
}

}  // namespace haunch::test
