// Dovetails, fingers and tongues: how they are spaced, what wood they leave, and what is wrong
// where one is out of its place. By themselves, on two boards that meet at a corner.
#include "dovetail.h"

#include "finger.h"
#include "joint_checks.h"
#include "marks.h"
#include "tongue.h"
#include "vocabulary.h"

namespace haunch::test {
namespace {

/// A drawer's front 400 long, 120 wide and 20 thick, seen from its face, and its left side behind
/// it, 12 thick, which goes `reach` into it.
Assembly corner(Length reach, Length side_width = mm(120), Length front_width = mm(120)) {
  Assembly wood;
  wood.groups = {{GroupKind::drawer, "drawer", {}, {}}};
  add_piece(wood, "front", Role::drawer_front, {mm(400), front_width, mm(20)},
            {{}, {Axis::x, Axis::y, Axis::z}});
  add_piece(wood, "left side", Role::drawer_side, {mm(300) + reach, side_width, mm(12)},
            {{Length(), Length(), mm(20) - reach}, {Axis::z, Axis::y, Axis::x}});
  wood.size = {mm(400), std::max(side_width, front_width), mm(320)};
  return wood;
}

void join_side(Assembly& wood, const EndJoint& joint) {
  joint.cut(wood, {Junction(wood, 0, 1, {Axis::z, false}, Axis::x)});
}

/// Tails of 15 in a front of 20, which go out 1 in 8, between pins of 6 and half pins of 7.
TailSpacing spacing_of(int number) {
  TailSpacing spacing;
  spacing.between = {Length(), mm(120)};
  spacing.spread = mm(1.875);
  spacing.pin = mm(6);
  spacing.half_pin = mm(7);
  spacing.number = number;
  spacing.whole = kStep;
  return spacing;
}

Assembly dovetailed() {
  Assembly wood = corner(mm(15));
  join_side(wood, Dovetail({space_tails(spacing_of(4)), mm(15), mm(1.875)}));
  return wood;
}

/// The findings of joints alone, as of a whole the two boards are none.
std::string joint_faults(const Assembly& wood) {
  std::string text;
  for (const Finding& finding : check_assembly(wood, Unit::mm))
    if (finding.status != Status::ok && (finding.joint || finding.rule->check == "fouling"))
      text += (text.empty() ? "" : "\n") + std::string(finding.rule->check) +
              (finding.status == Status::fail ? " fail" : " caution");
  return text;
}

}  // namespace

TEST_CASE("Tails, pins and half pins make up the width at both ends of the tails") {
  // (120 - 3 x 6 - 2 x 7) / 4 = 22
  const std::vector<Strip> tails = space_tails(spacing_of(4));
  REQUIRE(tails.size() == 4);
  CHECK(tails[0].low == mm(7));
  CHECK(tails[0].high == mm(29));
  CHECK(tails[1].low == mm(35));
  CHECK(tails[3].high == mm(113));
}

TEST_CASE("Where their number is open there are as many tails as none is too wide") {
  TailSpacing spacing = spacing_of(0);
  spacing.number.reset();
  spacing.widest = mm(22);
  CHECK(space_tails(spacing).size() == 4);
  spacing.widest = mm(21.9);
  CHECK(space_tails(spacing).size() == 5);
}

TEST_CASE("Half pins take up what whole tails leave") {
  TailSpacing spacing = spacing_of(3);
  spacing.whole = mm(1);
  spacing.half_pin_is_least = true;
  // (120 - 2 x 6 - 2 x 7) / 3 = 31.33: tails of 31, and 1 left for the two half pins.
  const std::vector<Strip> tails = space_tails(spacing);
  CHECK(tails[0].low == mm(7.5));
  CHECK(tails[0].high == mm(38.5));
  CHECK(tails[2].high == mm(112.5));
}

TEST_CASE("Fewer tails where a groove would else come out in a pin") {
  TailSpacing spacing = spacing_of(0);
  spacing.number.reset();
  spacing.widest = mm(12);
  // Six tails of 12.67 would end at 17.8 at their root; five of 16.4 at 21.5.
  spacing.groove = Strip{mm(12), mm(18)};
  const std::vector<Strip> tails = space_tails(spacing);
  CHECK(tails.size() == 5);
  CHECK(is_in_a_tail(tails, spacing.spread, *spacing.groove));
}

TEST_CASE("Tails that have no room are none") {
  CHECK(space_tails(spacing_of(20)).empty());
}

TEST_CASE("A lapped dovetail fits: tails on the lap, shoulders closed") {
  const Assembly wood = dovetailed();
  CHECK(wood.joints.front().kind == JointKind::lapped_dovetail);
  CHECK(measured(wood, "dovetail-fit") == Length());
  CHECK(measured(wood, "dovetail-home") == Length());
  CHECK(measured(wood, "dovetail-inside") == Length());
  CHECK(measured(wood, "shoulder-seat") == Length());
  CHECK(joint_faults(wood) == "");
}

TEST_CASE("Tails as they are marked are widths at their ends, from the low edge") {
  const Assembly wood = dovetailed();
  const TailSizes& tails = *wood.joints.front().tails;
  CHECK(tails.length == mm(15));
  CHECK(tails.spread == mm(1.875));
  CHECK(tails.each[1].from_edge == mm(35));
  CHECK(tails.each[1].width == mm(22));
}

TEST_CASE("Sockets stop in the front behind its lap, and are as deep as the side is thick") {
  const Assembly wood = dovetailed();
  const Piece front = piece(wood, "front");
  const Feature& sockets = front.features.front();
  CHECK(sockets.kind == FeatureKind::sockets);
  REQUIRE(sockets.prisms.size() == 4);
  // Along the front's length from its end, over its width and thickness the tail's outline.
  CHECK(sockets.prisms[0].along == 0);
  CHECK(sockets.prisms[0].from == Length());
  CHECK(sockets.prisms[0].to == mm(12));
  CHECK(room(sockets.prisms[0]) == Room{mm(7), mm(29), mm(5), mm(20)});
}

TEST_CASE("A through dovetail comes out flush with the other's face") {
  Assembly wood = corner(mm(20));
  join_side(wood, Dovetail({space_tails(spacing_of(4)), mm(20), mm(2.5)}));
  CHECK(wood.joints.front().kind == JointKind::dovetail);
  CHECK(measured(wood, "dovetail-fit") == Length());
  CHECK(joint_faults(wood) == "");
}

TEST_CASE("Tails stand between the edges of what receives them; the side goes on beside it") {
  // A back that stands 20 above the side's lower edge.
  Assembly wood = corner(mm(20), mm(120), mm(100));
  wood.pieces[0].place.origin[1] = mm(20);
  TailSpacing spacing = spacing_of(3);
  spacing.between = {mm(20), mm(120)};
  join_side(wood, Dovetail({space_tails(spacing), mm(20), mm(2.5)}));
  // (100 - 2 x 6 - 2 x 7) / 3 = 24.667
  CHECK(wood.joints.front().tails->each[0].from_edge == mm(27));
  CHECK(joint_faults(wood) == "");
  const std::vector<Box> below = wood_between(piece(wood, "left side"), Length(), mm(1));
  CHECK(std::find(below.begin(), below.end(), box(0, 0, 0, 1, 20, 12)) != below.end());
}

TEST_CASE("Dovetails are cut the same way where a case lies on its side") {
  // A case's top, and its side below, whose tails go up into it.
  Assembly wood;
  add_piece(wood, "top", Role::top, {mm(600), mm(300), mm(20)},
            {{Length(), mm(700), Length()}, {Axis::x, Axis::z, Axis::y}});
  add_piece(wood, "right side", Role::side, {mm(715), mm(300), mm(20)},
            {{mm(580), Length(), Length()}, {Axis::y, Axis::z, Axis::x}});
  wood.size = {mm(600), mm(720), mm(300)};
  TailSpacing spacing = spacing_of(6);
  spacing.between = {Length(), mm(300)};
  Dovetail({space_tails(spacing), mm(15), mm(1.875)})
      .cut(wood, {Junction(wood, 0, 1, {Axis::y, true}, Axis::x)});
  CHECK(measured(wood, "dovetail-fit") == Length());
  CHECK(measured(wood, "dovetail-home") == Length());
  CHECK(joint_faults(wood) == "");
}

TEST_CASE("A tail a tenth out of its place is found") {
  const auto moved = [](std::size_t axis, double by) {
    Assembly wrong = dovetailed();
    wrong.pieces[1].place.origin[axis] += mm(by);
    return joint_faults(wrong);
  };
  CHECK(moved(0, -0.1).find("dovetail-inside fail") != std::string::npos);
  CHECK(moved(1, 0.1).find("fouling fail") != std::string::npos);
  CHECK(moved(2, 0.1).find("dovetail-home fail") != std::string::npos);
}

TEST_CASE("Fingers are an odd number of equal shares, so that both edges are alike") {
  // 120 / 13 = 9.23 is nearer to 9 than 120 / 15 = 8.
  const std::vector<Strip> fingers = share_fingers({Length(), mm(130)}, mm(10));
  REQUIRE(fingers.size() == 7);
  CHECK(fingers[0].low == Length());
  CHECK(fingers[1].low == mm(20));
  CHECK(fingers[6].high == mm(130));
  CHECK(share_fingers({Length(), mm(120)}, mm(9)).size() == 7);
  CHECK(share_fingers({Length(), mm(120)}, mm(8)).size() == 8);
  CHECK(share_fingers({Length(), mm(120)}, mm(200)).size() == 1);
}

TEST_CASE("A finger joint has its play at each finger") {
  Assembly wood = corner(mm(20));
  join_side(wood, Fingers({share_fingers({Length(), mm(120)}, mm(8)), mm(0.1)}, mm(20)));
  CHECK(wood.joints.front().kind == JointKind::finger);
  CHECK(measured(wood, "finger-fit") == mm(0.05));
  CHECK(joint_faults(wood) == "");
  // The first finger is 8 less a quarter of the play, its slot 8 more by as much.
  CHECK(cuts(piece(wood, "front"), "fingers").front() == box(0, 0, 0, 12, 8.025, 20));
}

TEST_CASE("Fingers off their place, or short of the end of their slots, are found") {
  Assembly wood = corner(mm(20));
  join_side(wood, Fingers({share_fingers({Length(), mm(120)}, mm(8)), mm(0.1)}, mm(20)));
  const auto moved = [&](std::size_t axis, double by) {
    Assembly wrong = wood;
    wrong.pieces[1].place.origin[axis] += mm(by);
    return joint_faults(wrong);
  };
  CHECK(moved(0, -0.1).find("finger-inside fail") != std::string::npos);
  CHECK(moved(1, 0.1).find("finger-fit fail") != std::string::npos);
}

TEST_CASE("A tongue looser than its housing lets it be is told of") {
  Assembly wood = corner(mm(8));
  join_side(wood, Tongue({mm(8), mm(6), mm(6), mm(0.4), mm(0.5)}));
  CHECK(joint_faults(wood).find("tongue-fit caution") != std::string::npos);
}

TEST_CASE("A bare-faced tongue stands in a housing narrower than its piece") {
  Assembly wood = corner(mm(8));
  TongueDesign design{mm(8), mm(6), mm(6), mm(0.1), mm(0.5)};
  join_side(wood, Tongue(design));
  CHECK(wood.joints.front().kind == JointKind::tongue);
  CHECK(measured(wood, "tongue-fit") == mm(0.1));
  CHECK(measured(wood, "tongue-room") == mm(0.5));
  CHECK(measured(wood, "shoulder-seat") == Length());
  // Beyond the housing 6 of short grain.
  CHECK(joint_faults(wood) == "housing-end caution");
  CHECK(cuts(piece(wood, "left side"), "tongue").front() == box(0, 0, 0, 8, 120, 6));
  CHECK(cuts(piece(wood, "front"), "housing").front() == box(5.95, 0, 11.5, 12.05, 120, 20));
}

TEST_CASE("A tongue whose shoulder does not close, or that meets the bottom, is found") {
  Assembly wood = corner(mm(8));
  join_side(wood, Tongue({mm(8), mm(6), mm(6), mm(0.1), mm(0.5)}));
  Assembly open = wood;
  open.pieces[1].place.origin[2] += mm(0.1);
  CHECK(joint_faults(open).find("shoulder-seat fail") != std::string::npos);
  Assembly shallow = wood;
  shallow.pieces[0].features.front().cuts.front().low[2] += mm(0.6);
  CHECK(joint_faults(shallow).find("tongue-room fail") != std::string::npos);
}

}  // namespace haunch::test
