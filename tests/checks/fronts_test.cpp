// Fronts in a case by hand: gaps, laps, drawers that run and leaves that swing.
#include "box_case.h"

namespace haunch::test {
namespace {

/// An inset drawer front of 20 with a box behind it, 2 from the case all round; it runs out 400.
Assembly with_drawer(const Box& front = box(20, 20, 0, 580, 218, 20)) {
  Assembly wood = box_case();
  Fit fit;
  fit.room = {mm(2), mm(2), mm(2), mm(2)};
  fit.beside.head = false;
  fit.behind = mm(40);
  fit.moves = Slide{Axis::z, mm(-400)};
  const std::size_t group = add_front_group(wood, GroupKind::drawer, "drawer-1", fit);
  add_board(wood, "drawer front", Role::drawer_front, front, group);
  add_board(wood, "drawer bottom", Role::drawer_bottom, box(32, 30, 20, 568, 40, 500), group);
  // What it stops at, 40 behind its box.
  add_board(wood, "stop", Role::stop, box(18, 18, 540, 582, 60, 560), kCase);
  return wood;
}

/// A door over the whole front, 20 thick, 1.5 within the outside of the case; its pin in the gap.
Assembly with_overlay_door() {
  Assembly wood = box_case();
  wood.size[2] = mm(580);
  Fit fit;
  fit.meets = Meets::overlay;
  fit.beside = {false, false, false, false};
  fit.lap = {mm(16.5), mm(16.5), mm(16.5), mm(16.5)};
  fit.moves = Swing{Axis::y, {mm(0), mm(0), mm(-26)}, false};
  const std::size_t group = add_front_group(wood, GroupKind::leaf, "door-1", fit);
  add_board(wood, "door", Role::panel, box(1.5, 1.5, -20, 598.5, 718.5, 0), group);
  return wood;
}

}  // namespace

TEST_CASE("An inset front stands in the middle of its gaps") {
  CHECK(doubts(with_drawer(), "front-").empty());
  CHECK(doubts(with_drawer(box(21, 20, 0, 580, 218, 20)), "front-") ==
        std::vector<std::string>{"front-gap-left"});
  CHECK(finding(with_drawer(), "front-gap-right").value == mm(2));
  // Above it nothing stands, and nothing is measured.
  CHECK(findings(with_drawer(), "front-gap-head").empty());
}

TEST_CASE("A drawer meets nothing on its way out, and what is behind it as it was set out") {
  const Assembly wood = with_drawer();
  CHECK(doubts(wood, "slide").empty());
  CHECK(finding(wood, "slide-out").value == mm(400));
  CHECK(finding(wood, "slide-in").value == mm(40));
  // A catch 120 before its box stops it there.
  Assembly caught = wood;
  add_board(caught, "catch", Role::stop, box(100, 40, -130, 120, 60, -100), kCase);
  CHECK(finding(caught, "slide-out").value == mm(100));
  CHECK(doubts(caught, "slide") == std::vector<std::string>{"slide-out"});
}

TEST_CASE("A drawer behind a door comes out when the open leaf leaves it room") {
  // The drawer 24 behind the face, a leaf of 20 before it.
  Assembly wood = box_case();
  Fit door;
  door.room = {mm(2), mm(2), mm(2), mm(2)};
  door.moves = Swing{Axis::y, {mm(19), mm(0), mm(-6)}, false};
  const std::size_t leaf = add_front_group(wood, GroupKind::leaf, "door-1", door);
  add_board(wood, "door", Role::panel, box(20, 20, 0, 580, 700, 20), leaf);
  Fit fit;
  fit.beside = {false, false, false, false};
  fit.moves = Slide{Axis::z, mm(-400)};
  const std::size_t group = add_front_group(wood, GroupKind::drawer, "drawer-1", fit);
  add_board(wood, "drawer", Role::drawer_front, box(48, 30, 24, 566, 150, 500), group);
  // Open, the leaf of 20 stands from 6 to 26 beside its pin at 19: 25 to 45. The drawer begins
  // at 48.
  CHECK(doubts(wood, "slide").empty());
  CHECK(finding(wood, "slide-past-door").value == mm(400));
  // Nearer to the side it meets the open leaf, which stands before it at once.
  wood.pieces.back().place.origin[0] = mm(40);
  CHECK(doubts(wood, "slide") == std::vector<std::string>{"slide-past-door"});
}

TEST_CASE("An overlay door laps its opening at each side") {
  const Assembly wood = with_overlay_door();
  CHECK(doubts(wood, "front-").empty());
  CHECK(finding(wood, "front-lap-left").value == mm(16.5));
  CHECK(finding(wood, "front-lap-head").value == mm(16.5));
  Assembly shifted = wood;
  shifted.pieces.back().place.origin[0] += mm(1);
  CHECK(doubts(shifted, "front-") == std::vector<std::string>{"front-lap-left", "front-lap-right"});
}

TEST_CASE("A door swings before what stands beside it, not into it") {
  Assembly wood = with_overlay_door();
  CHECK(doubts(wood, "swing-free").empty());
  // A post 100 before the case, in the door's way.
  add_board(wood, "post", Role::side, box(300, 0, -140, 318, 720, -100), kCase);
  CHECK(doubts(wood, "swing-free") == std::vector<std::string>{"swing-free"});
}

}  // namespace haunch::test
