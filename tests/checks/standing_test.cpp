// A case by hand: whether it can be stood up, how it hangs over its feet, what lies loose in it,
// and the rows of holes for its shelves.
#include "box_case.h"
#include "round_bore.h"

namespace haunch::test {
namespace {

/// Rows of three holes, 5 wide and 10 deep, 32 apart from 200 up, 37 from the front of each side.
void bore_sides(Assembly& wood, Length right_up = {}) {
  for (const bool right : {false, true})
    for (const Length deep : {mm(37), mm(485)}) {
      Feature feature;
      feature.kind = FeatureKind::shelf_pin_holes;
      feature.fitting = Fitting{"shelf pins", 2, !right};
      for (int hole = 0; hole < 3; ++hole) {
        const Length up = mm(197.5 + 32 * hole) + (right ? right_up : Length());
        const Length from = right ? Length() : mm(8);
        feature.prisms.push_back(
            round_hole({{up, deep - mm(2.5), from}, {up + mm(5), deep + mm(2.5), from + mm(10)}}, 2,
                       bore_corners(mm(5))));
      }
      wood.pieces[right ? 1 : 0].features.push_back(feature);
    }
}

/// With a face frame of 20, whose stiles leave an opening of so much in the middle.
Assembly framed(Length opening, Length shelf) {
  Assembly wood = box_case();
  for (Piece& piece : wood.pieces)
    piece.place.origin[2] += mm(20);
  wood.size[2] = mm(580);
  const Length stile = floor_half(mm(600) - opening);
  Box left{{}, {stile, mm(720), mm(20)}};
  Box right{{mm(600) - stile, mm(0), mm(0)}, {mm(600), mm(720), mm(20)}};
  add_board(wood, "left stile", Role::stile, left, kCase);
  add_board(wood, "right stile", Role::stile, right, kCase);
  const Length from = floor_half(mm(600) - shelf);
  Box lies{{from, mm(300), mm(30)}, {from + shelf, mm(318), mm(500)}};
  const std::size_t piece = add_board(wood, "shelf", Role::shelf, lies, kCase);
  wood.pieces[piece].loose = true;
  return wood;
}

}  // namespace

TEST_CASE("A case is stood up over the diagonal of its height and depth") {
  // sqrt(720^2 + 560^2) = 912.14
  Assembly wood = box_case();
  CHECK(findings(wood, "stand-up").empty());
  wood.ceiling = mm(920);
  CHECK(finding(wood, "stand-up").status == Status::ok);
  wood.ceiling = mm(912);
  CHECK(finding(wood, "stand-up").status == Status::fail);
  // Of a cabinet that says in which room it is to stand: sqrt(2200^2 + 600^2) = 2280.4.
  const std::string tall = R"({"kind": "cabinet", "units": "mm", "room": {"height": 2280},
      "size": {"width": 600, "height": 2200, "depth": 600}})";
  CHECK(finding(haunch::test::wood(tall), "stand-up").status == Status::fail);
}

TEST_CASE("What hangs before the feet of a case with its drawers out tips it") {
  Assembly wood = box_case();
  Fit fit;
  fit.beside = {false, false, false, false};
  fit.moves = Slide{Axis::z, mm(-500)};
  const std::size_t group = add_front_group(wood, GroupKind::drawer, "drawer-1", fit);
  add_board(wood, "drawer", Role::drawer_front, box(20, 20, 0, 580, 700, 60), group);
  const auto oak = job(R"({"kind": "face-frame", "units": "mm", "species": "white oak", )"
                       R"("size": {"width": 600, "height": 720}})");
  const auto margin = [&] {
    for (const Finding& it : check_built(wood, *oak))
      if (it.rule->check == "tipping-margin") return it;
    throw std::invalid_argument("not told");
  };
  // The case: (720 * 2 + 564 * 2) * 18 * 560 = 25,885,440 mm3 at 280; the drawer 560 * 680 * 60 =
  // 22,848,000 at 30, drawn out 500 at -470: (25.885 * 280 - 22.848 * 470) / 48.733 = -71.6.
  CHECK(margin().status == Status::caution);
  CHECK(margin().value > mm(-71.7));
  CHECK(margin().value < mm(-71.5));
  // Something heavy at its back holds it.
  const std::size_t sack =
      add_board(wood, "shelf", Role::shelf, box(18, 18, 500, 582, 36, 560), kCase);
  wood.pieces[sack].load = 40;
  CHECK(margin().status == Status::ok);
}

TEST_CASE("A shelf narrower than its opening goes in straight, a wider one tilted or not at all") {
  CHECK(finding(framed(mm(540), mm(530)), "goes-in-straight").value == mm(10));
  // 560 long and 18 thick through an opening 500 wide: tilted so that 560 cos a + 18 sin a = 500,
  // at 28.7 degrees; then it stands 560 sin a + 18 cos a = 284.4 high, of 684.
  const Finding tilted = finding(framed(mm(500), mm(560)), "goes-in-tilted");
  CHECK(tilted.status == Status::ok);
  CHECK(tilted.value > mm(684 - 284.5));
  CHECK(tilted.value < mm(684 - 284.3));
  // Through 300 it would have to stand upright, 474 high, and still goes; through 150 too; but one
  // whose diagonal is more than the room behind is wide cannot be laid down there.
  CHECK(finding(framed(mm(500), mm(563.9)), "goes-in-tilted").status == Status::fail);
}

TEST_CASE("The holes of shelf pins are in steps, and level from side to side") {
  Assembly wood = box_case();
  bore_sides(wood);
  CHECK(doubts(wood, "shelf-pin").empty());
  CHECK(finding(wood, "shelf-pin-behind").value == mm(8));
  Assembly off = box_case();
  bore_sides(off, mm(1));
  CHECK(doubts(off, "shelf-pin").front() == "shelf-pin-level");
  // One hole a millimetre off its step.
  Prism& hole = wood.pieces[0].features.front().prisms[1];
  for (Corner& corner : hole.outline)
    corner.u += mm(1);
  CHECK(doubts(wood, "shelf-pin").front() == "shelf-pin-pitch");
}

}  // namespace haunch::test
