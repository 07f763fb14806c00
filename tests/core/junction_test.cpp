// Junctions: one way of seeing where two members meet, however they lie.
#include "junction.h"

#include "catch.h"

using namespace haunch;

namespace {

const Length none;

Length mm(std::int64_t count) {
  return Length::from_mm_thousandths(count * 1000);
}

Piece member(const Triple& blank, const Place& place) {
  Piece piece;
  piece.blank = blank;
  piece.place = place;
  return piece;
}

/// A stile 100 wide, 40 thick, from 500 on; a rail 80 wide that goes 60 into it from the left, and
/// one that does so from the right.
Assembly stile_and_rails() {
  Assembly wood;
  wood.pieces.push_back(
      member({mm(2000), mm(100), mm(40)}, {{mm(500), none, none}, {Axis::y, Axis::x, Axis::z}}));
  wood.pieces.push_back(
      member({mm(560), mm(80), mm(40)}, {{none, mm(900), none}, {Axis::x, Axis::y, Axis::z}}));
  wood.pieces.push_back(
      member({mm(560), mm(80), mm(40)}, {{mm(540), mm(900), none}, {Axis::x, Axis::y, Axis::z}}));
  return wood;
}

/// A jamb 120 from face to back and 30 thick, whose top goes 20 into a head.
Assembly jamb_and_head() {
  Assembly wood;
  wood.pieces.push_back(
      member({mm(900), mm(120), mm(30)}, {{none, mm(2000), none}, {Axis::x, Axis::z, Axis::y}}));
  wood.pieces.push_back(
      member({mm(2020), mm(120), mm(30)}, {{mm(7), none, none}, {Axis::y, Axis::z, Axis::x}}));
  return wood;
}

}  // namespace

TEST_CASE("a tenon is seen alike from the left and from the right") {
  const Assembly wood = stile_and_rails();
  const Junction from_left(wood, 0, 1, {Axis::x, true});
  const Junction from_right(wood, 0, 2, {Axis::x, false});
  CHECK(from_left.blank(wood.pieces[1]) == Box{{-mm(500), none, none}, {mm(60), mm(80), mm(40)}});
  CHECK(from_right.blank(wood.pieces[2]) == from_left.blank(wood.pieces[1]));
  CHECK(from_left.blank(wood.pieces[0]) ==
        Box{{none, -mm(900), none}, {mm(100), mm(1100), mm(40)}});
  CHECK(from_right.blank(wood.pieces[0]) == from_left.blank(wood.pieces[0]));
}

TEST_CASE("a mortise from a junction lies at the edge that is entered") {
  const Assembly wood = stile_and_rails();
  const Box mortise{{none, mm(10), mm(15)}, {mm(62), mm(70), mm(25)}};
  const Place& stile = wood.pieces[0].place;
  CHECK(Junction(wood, 0, 1, {Axis::x, true}).own(mortise, stile) ==
        Box{{mm(910), none, mm(15)}, {mm(970), mm(62), mm(25)}});
  CHECK(Junction(wood, 0, 2, {Axis::x, false}).own(mortise, stile) ==
        Box{{mm(910), mm(38), mm(15)}, {mm(970), mm(100), mm(25)}});
}

TEST_CASE(
    "in a frame, tenons are thin from the face to the back, not along their piece's thickness") {
  const Assembly wood = jamb_and_head();
  const Junction junction(wood, 0, 1, {Axis::y, true}, Axis::z);
  CHECK(junction.axes == std::array{Axis::y, Axis::x, Axis::z});
  CHECK(junction.own_axis(kThrough, wood.pieces[1].place) == 1);
  CHECK(junction.own_axis(kAcross, wood.pieces[1].place) == 2);
  CHECK(junction.own({{none, mm(5), mm(50)}, {mm(20), mm(30), mm(70)}}, wood.pieces[1].place) ==
        Box{{mm(2000), mm(50), mm(5)}, {mm(2020), mm(70), mm(30)}});
}

TEST_CASE("from a junction to the assembly and back is where one began") {
  for (const bool upwards : {false, true}) {
    const Assembly wood = stile_and_rails();
    const Junction junction(wood, 0, upwards ? 1 : 2, {Axis::x, upwards});
    const Box box{{mm(1), mm(2), mm(3)}, {mm(10), mm(20), mm(30)}};
    CHECK(junction.from_assembly(junction.in_assembly(box)) == box);
  }
}

TEST_CASE("an outline keeps the order of its corners, whichever way its piece lies") {
  const Assembly wood = stile_and_rails();
  const Prism slope{kThrough, mm(1), mm(2), {{mm(3), mm(4)}, {mm(5), mm(4)}, {mm(5), mm(6)}}};
  const Prism in_stile = Junction(wood, 0, 2, {Axis::x, false}).own(slope, wood.pieces[0].place);
  CHECK(in_stile.along == 2);
  CHECK(in_stile.outline ==
        std::vector<Corner>{{mm(904), mm(97)}, {mm(904), mm(95)}, {mm(906), mm(95)}});
  const Prism along_the_way =
      Junction(wood, 0, 2, {Axis::x, false})
          .own({kIn, mm(10), mm(30), {{mm(1), mm(2)}}}, wood.pieces[0].place);
  CHECK(along_the_way.along == 1);
  CHECK(along_the_way.from == mm(70));
  CHECK(along_the_way.to == mm(90));
}
