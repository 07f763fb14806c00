// Drawers: how large they are in their opening, how their corners and their bottom are cut, and
// that what is cut goes together.
#include <algorithm>

#include "drawer_plan.h"
#include "joint_checks.h"
#include "vocabulary.h"

namespace haunch::test {
namespace {

/// A drawer of white oak in an opening of 420 x 150, 520 deep.
std::string drawer_mm(std::string_view more = {}) {
  return R"({"kind": "drawer", "units": "mm", "species": "white oak",
             "opening": {"width": 420, "height": 150, "depth": 520})" +
         std::string(more.empty() ? "" : ", ") + std::string(more) + "}";
}
std::string drawer_in(std::string_view more = {}) {
  return R"({"kind": "drawer", "units": "in", "species": "white oak",
             "opening": {"width": 16, "height": 6, "depth": 20})" +
         std::string(more.empty() ? "" : ", ") + std::string(more) + "}";
}
constexpr std::string_view kOnMetal = R"("runner": {"side": 12.7, "length": 450})";
std::string on_metal(std::string_view more = {}) {
  return drawer_mm(std::string(kOnMetal) + (more.empty() ? "" : ", ") + std::string(more));
}

/// Where a piece stands, from the front's lower left corner at its face.
Box stands(const Assembly& wood, std::string_view name) {
  return placed_blank(piece(wood, name));
}

}  // namespace

// ---- on wooden runners

TEST_CASE("A drawer on wooden runners is its opening less the play, and the season above") {
  // White oak, flat-sawn: 150 x 0.00365 x (12 - 8) = 2.19, up to the half 2.5; and 1 of play.
  const Assembly drawer = wood(drawer_mm());
  CHECK(drawer.size == Triple{mm(419), mm(146.5), mm(510)});
  const Fit& fit = opening_of(drawer);
  CHECK(fit.room.left == mm(0.5));
  CHECK(fit.room.right == mm(0.5));
  CHECK(fit.room.head == mm(3.5));
  CHECK(fit.room.foot == Length());
  CHECK(not_ok(drawer) == "");
}

TEST_CASE("In inches it is the same in fractions") {
  // 6 x 0.0146 = 0.0876, up to the sixty-fourth 6/64, and 1/32.
  const Assembly drawer = wood(drawer_in());
  CHECK(drawer.size == Triple{inch(15, 31, 32), inch(5, 7, 8), inch(19, 5, 8)});
  CHECK(not_ok(drawer, Unit::inch) == "");
}

TEST_CASE("The front is the drawer's width, its sides are let in to it with a lap before them") {
  const Assembly drawer = wood(drawer_mm());
  CHECK(stands(drawer, "front") == box(0, 0, 0, 419, 146.5, 20));
  // Tails of 15: three quarters of the front.
  CHECK(stands(drawer, "left side") == box(0, 0, 5, 12, 146.5, 510));
  CHECK(stands(drawer, "right side") == box(407, 0, 5, 419, 146.5, 510));
  CHECK(joint(drawer, "front", "left side").kind == JointKind::lapped_dovetail);
  CHECK(joint(drawer, "back", "left side").kind == JointKind::dovetail);
}

TEST_CASE("The back stands on the bottom, which runs under it") {
  const Assembly drawer = wood(drawer_mm());
  CHECK(stands(drawer, "back") == box(0, 16, 498, 419, 146.5, 510));
  // Grooves 6 deep, 1 left in each: 5 in the sides and in the front.
  CHECK(stands(drawer, "bottom") == box(7, 10, 15, 412, 16, 510));
  CHECK(cuts(piece(drawer, "left side"), "groove").front() == box(0, 10, 6, 505, 16.1, 12));
  CHECK(cuts(piece(drawer, "right side"), "groove").front() == box(0, 10, 0, 505, 16.1, 6));
  CHECK(cuts(piece(drawer, "front"), "groove").front() == box(0, 10, 14, 419, 16.1, 20));
  CHECK(joint(drawer, "back", "bottom").kind == JointKind::screws);
}

TEST_CASE("Tails are spaced so that the groove comes out in one") {
  // In 146.5: pins 6, half pins at least 6, tails at most 18: six of 17, and 2.5 left for the half
  // pins. The lowest from 7.25 to 24.25, at its root 1.875 less: 9.125 to 22.375; the groove from
  // 10 to 16.1.
  const Assembly drawer = wood(drawer_mm());
  const TailSizes tails = *joint(drawer, "front", "left side").tails;
  REQUIRE(tails.each.size() == 6);
  CHECK(tails.length == mm(15));
  CHECK(tails.spread == mm(1.875));
  CHECK(tails.each[0].from_edge == mm(7.25));
  CHECK(tails.each[0].width == mm(17));
  CHECK(tails.each[5].from_edge == mm(122.25));
  CHECK(least(drawer, "groove-in-tail") == mm(0.875));
}

TEST_CASE("Behind, tails stand between the edges of the back") {
  // In 130.5: six of 14.5, and half pins of 6.75.
  const TailSizes tails = *joint(wood(drawer_mm()), "back", "right side").tails;
  REQUIRE(tails.each.size() == 6);
  CHECK(tails.length == mm(12));
  CHECK(tails.spread == mm(1.5));
  CHECK(tails.each[0].from_edge == mm(22.75));
  CHECK(tails.each[0].width == mm(14.5));
}

TEST_CASE("Number, slope and pins of tails as they are said") {
  const Assembly drawer =
      wood(drawer_mm(R"("corner": {"tails": {"number": 4, "slope": 6, "half_pin": 7, "pin": 5}})"));
  const TailSizes tails = *joint(drawer, "front", "left side").tails;
  // (146.5 - 2 x 7 - 3 x 5) / 4 = 29.375; 15 / 6 = 2.5
  REQUIRE(tails.each.size() == 4);
  CHECK(tails.each[0].from_edge == mm(7));
  CHECK(tails.each[0].width == mm(29.375));
  CHECK(tails.spread == mm(2.5));
  CHECK(not_ok(drawer) == "");
}

TEST_CASE("What is doubtful in tails is told") {
  const auto tails = [](std::string_view says) {
    return not_ok(wood(drawer_mm(R"("corner": {"tails": {)" + std::string(says) + "}}")));
  };
  CHECK(tails(R"("half_pin": 5, "number": 4)") == "half-pin caution");
  CHECK(tails(R"("half_pin": 2, "number": 4)") == "half-pin fail");
  CHECK(tails(R"("pin": 2, "number": 4)") == "pin-width caution");
  CHECK(tails(R"("number": 2)") == "tail-width caution");
  CHECK(tails(R"("slope": 12)") == "tail-slope caution");
  CHECK(tails(R"("slope": 3)").find("tail-slope caution") != std::string::npos);
  CHECK(tails(R"("number": 12)").find("groove-in-tail fail") != std::string::npos);
  CHECK(not_ok(wood(drawer_mm(R"("corner": {"lap": 2})"))) == "dovetail-lap caution");
  CHECK(not_ok(wood(drawer_mm(R"("corner": {"lap": 1})"))) == "dovetail-lap fail");
}

TEST_CASE("Tails that have no room are refused") {
  CHECK(refusal(drawer_mm(R"("corner": {"tails": {"number": 40}})"))
            .find("/corner/tails/number: pins of 6 mm and half pins of 6 mm leave no tails in "
                  "146.5 mm") == 0);
}

TEST_CASE("A dovetail cutter rules slope, pins and lap") {
  // 12.7 wide, its edges as high, 14 degrees: before tails of 20 - 12.7 = 7.3, up to the half 7.5,
  // is left; they are 12.5 long and go out by 12.5 x tan 14 = 3.117. Between tails behind, 12 long,
  // it leaves 12.7 - 2 x 12 x tan 14 = 6.716: pins of 7.
  const Assembly drawer = wood(drawer_mm(R"("corner": {"tails": {"cut_by": {}}})"));
  const TailSizes tails = *joint(drawer, "front", "left side").tails;
  CHECK(tails.length == mm(12.5));
  CHECK(decimal(tails.spread, Unit::mm).substr(0, 5) == "3.116");
  REQUIRE(tails.each.size() > 1);
  CHECK(tails.each[1].from_edge - tails.each[0].from_edge - tails.each[0].width == mm(7));
  CHECK(tails.each[0].width >= mm(12.7));
  CHECK(not_ok(drawer) == "");
  const Worked worked = work(drawer_mm(R"("corner": {"tails": {"cut_by": {}}})"));
  CHECK(std::any_of(worked.cautions.begin(), worked.cautions.end(), [](const Caution& it) {
    return it.about == "dovetail cutter" && it.words.find("6.35 mm") != std::string::npos;
  }));
}

TEST_CASE("What a dovetail cutter cannot cut is told with what would do") {
  const auto refused = [](std::string_view corner, std::string_view tails) {
    return refusal(drawer_mm(R"("corner": {)" + std::string(corner) +
                             R"("tails": {"cut_by": {}, )" + std::string(tails) + "}}"));
  };
  CHECK(refused(R"("lap": 5, )", R"("number": 4)") ==
        "/corner/tails/cut_by: tails of 15 mm are longer than its edges are high, 12.7 mm; take a "
        "higher cutter, or leave a \"lap\" of 7.3 mm before them");
  CHECK(refused("", R"("pin": 5)") ==
        "/corner/tails/pin: a cutter of 12.7 mm leaves 7 mm at least between two tails; make pins "
        "that wide");
  CHECK(refused("", R"("number": 8)")
            .find("are narrower than their cutter, 12.7 mm; make fewer "
                  "tails, and wider ones") != std::string::npos);
  CHECK(refused("", R"("slope": 6)") ==
        "/corner/tails/slope: the angle of the cutter, \"cut_by\", is their slope; keep one of the "
        "two");
  CHECK(
      refusal(drawer_mm(
          R"("corner": {"tails": {"cut_by": {"diameter": 6, "height": 14, "angle": 14}}})")) ==
      "/corner/tails/cut_by/height: a cutter of 6 mm has no neck left above edges 14 mm high at 14 "
      "degrees; read its sizes off it");
}

TEST_CASE("A wide cutter has fewer tails where their number is open") {
  // In 60 two tails between half pins of 6 would have less than 19 each beside a pin of some 16.
  const Assembly drawer = wood(drawer_mm(
      R"("sides": {"height": 60}, "corner": {"tails": {"cut_by": {"diameter": 19, "height": 22,
         "angle": 7}}})"));
  for (const char* across : {"front", "back"}) {
    const TailSizes tails = *joint(drawer, across, "left side").tails;
    for (const TenonSpan& tail : tails.each)
      CHECK(tail.width >= mm(19));
  }
}

TEST_CASE("A slope that the spec says goes before the shop's cutter") {
  const ShopDefaults jig =
      shop(R"({"units": "mm", "fronts": {"drawer": {"corner": {"tails": {"cut_by": {}}}}}})");
  const Assembly by_hand = wood(drawer_mm(R"("corner": {"tails": {"slope": 6}})"), &jig);
  CHECK(joint(by_hand, "front", "left side").tails->spread == mm(2.5));
  const Assembly by_cutter = wood(drawer_mm(), &jig);
  CHECK(joint(by_cutter, "front", "left side").tails->length == mm(12.5));
}

// ---- its bottom

TEST_CASE(
    "A bottom of wood is fixed in front, and goes on behind the back as far as it may shrink") {
  const Assembly drawer = wood(drawer_mm(R"("bottom": {"material": "white oak"})"));
  const Piece bottom = piece(drawer, "bottom");
  // From 8 to 6 %: 520 x 0.00365 x 2 = 3.796, and 3, up to the millimetre 7; but behind the middle
  // of the back are 10.25 of slot and 3 of wood, 6 of them below it: 7.25, up to the millimetre 8.
  CHECK(stands(drawer, "bottom") == box(7, 10, 15, 412, 18, 510));
  CHECK(stands(drawer, "back").high[2] == mm(502));
  CHECK(bottom.matter == Matter::wood);
  CHECK(bottom.held == Held::low_edge);
  // Grain level, parallel to the front.
  CHECK(bottom.place.axes[0] == Axis::x);
  // To 12 % it goes 520 x 0.00365 x 4 = 7.592 past screws in the middle of slots: 4.5 + 16 long.
  REQUIRE(cuts(bottom, "slot").size() == 3);
  CHECK(cuts(bottom, "slot").front().extent(1) == mm(20.5));
  CHECK(not_ok(drawer) == "");
}

TEST_CASE("A bottom of wood through its seasons stays in its grooves and on its screws") {
  const auto seasons = work(drawer_mm(R"("bottom": {"material": "white oak"},
                                         "moisture": {"build": 8, "low": 6, "high": 12})"));
  const auto made = job(drawer_mm(R"("bottom": {"material": "white oak"},
                                     "moisture": {"build": 8, "low": 6, "high": 12})"));
  for (const Finding& finding : check_job(seasons.assembly, *made))
    CHECK((finding.status == Status::ok ? "" : std::string(finding.rule->check)) == "");
}

TEST_CASE("A drawer without room for its season sticks in the wettest month") {
  const auto wettest = [](std::string_view runner) {
    const auto made = job(drawer_mm(
        R"("moisture": {"build": 8, "low": 6, "high": 12}, "runner": )" + std::string(runner)));
    std::string text;
    for (const Finding& finding : check_job(work(*made).assembly, *made))
      if (finding.status != Status::ok) text += std::string(finding.rule->check) + "\n";
    return text;
  };
  // 149 x 0.00365 x 4 = 2.18 of swelling, and 1 above it.
  CHECK(wettest(R"({"kind": "wood", "play_above": 1})") == "drawer-head\n");
  CHECK(wettest(R"({"kind": "wood", "play": 0})").find("drawer-sides") != std::string::npos);
  CHECK(wettest("\"wood\"") == "");
}

TEST_CASE("A bottom of board may be grooved all round") {
  const Assembly drawer = wood(drawer_mm(R"("bottom": {"under_back": false})"));
  CHECK(stands(drawer, "back") == box(0, 0, 498, 419, 146.5, 510));
  CHECK(stands(drawer, "bottom") == box(7, 10, 15, 412, 16, 503));
  CHECK(joint(drawer, "back", "bottom").kind == JointKind::panel_in_groove);
  CHECK(not_ok(drawer) == "");
  CHECK(refused_at(drawer_mm(R"("bottom": {"under_back": false, "material": "white oak"})")) ==
        "/bottom/under_back");
}

TEST_CASE("Thin sides have slips for the bottom") {
  const Assembly drawer = wood(drawer_mm(R"("sides": {"thickness": 8})"));
  // The back is as thin: for its screws the bottom goes on 2 behind it (3 + 4.5 / 2 - 8 / 2
  // = 1.25).
  CHECK(stands(drawer, "back").high[2] == mm(508));
  // 12 wide, and as high as leaves as much above the groove as below: 10 + 6.1 + 10.
  CHECK(stands(drawer, "left slip") == box(8, 0, 20, 20, 26.1, 500));
  CHECK(cuts(piece(drawer, "left side"), "groove").empty());
  CHECK(stands(drawer, "bottom") == box(15, 10, 15, 404, 16, 510));
  CHECK(not_ok(drawer) == "");
}

// ---- other corners

TEST_CASE("In board, corners are rebated") {
  const Assembly drawer = wood(drawer_mm(R"("material": "birch plywood")"));
  CHECK(joint(drawer, "front", "left side").kind == JointKind::rebated_corner);
  CHECK(joint(drawer, "left side", "back").kind == JointKind::rebated_corner);
  // A third of the front's 20 stays before the sides, down to 6; half of the sides' 12 behind the
  // back.
  CHECK(stands(drawer, "left side") == box(0, 0, 6, 12, 149, 510));
  CHECK(stands(drawer, "back") == box(6, 16, 498, 413, 149, 510));
  CHECK(piece(drawer, "left side").matter == Matter::board);
  CHECK(piece(drawer, "left side").material == "birch plywood");
  CHECK(piece(drawer, "front").matter == Matter::wood);
  CHECK(not_ok(drawer) == "");
}

TEST_CASE("A wood that is not listed is wood all the same; ply of any wood is board") {
  const Assembly oak = wood(drawer_mm(R"("material": "oak", "bottom": {"material": "oak"})"));
  CHECK(piece(oak, "left side").matter == Matter::wood);
  CHECK(piece(oak, "bottom").matter == Matter::wood);
  const Assembly ply = wood(drawer_mm(R"("material": "birch ply", "bottom": {"material": "ply"})"));
  CHECK(piece(ply, "left side").matter == Matter::board);
  CHECK(piece(ply, "bottom").matter == Matter::board);
}

TEST_CASE("Every corner goes together, in front and behind") {
  for (const char* front : {"lapped-dovetail", "dovetail", "finger", "rebated", "tongued"})
    for (const char* back :
         {"lapped-dovetail", "dovetail", "finger", "rebated", "tongued", "housed"}) {
      const Assembly drawer =
          wood(drawer_mm(R"("material": "birch plywood", "corner": {"front": ")" +
                         std::string(front) + R"(", "back": ")" + back + "\"}"));
      CAPTURE(front, back);
      // Before a tongue in the front there is short grain.
      const bool short_grain = std::string_view(front) == "tongued";
      CHECK(not_ok(drawer) == (short_grain ? "housing-end caution" : ""));
    }
}

TEST_CASE("Dowels hold corners that stand flat, though thin sides have little room for them") {
  const Assembly drawer = wood(drawer_mm(R"("corner": {"front": "dowel", "back": "dowel"})"));
  CHECK(not_ok(drawer) ==
        "hole-edge caution\nhole-wall caution\ndowel-depth caution\ndowel-thickness caution");
}

TEST_CASE("A front that ends with its sides cannot have them housed") {
  CHECK(refused_at(drawer_mm(R"("corner": {"front": "housed"})")) == "/corner/front");
}

TEST_CASE("Sizes of joints that are not there are refused") {
  CHECK(refused_at(drawer_mm(R"("corner": {"front": "rebated", "back": "rebated",
                                           "tails": {"number": 3}, "finger_width": 8})")) ==
        "/corner/tails\n/corner/finger_width");
}

// ---- on metal runners

TEST_CASE("On metal runners the box is as their maker's sheet asks, the front fixed on before it") {
  const Assembly drawer = wood(on_metal());
  // 420 - 2 x 12.7 = 394.6; 150 - 6 - 6 = 138. The front is 2 less all round.
  CHECK(stands(drawer, "front") == box(0, 0, 0, 416, 146, 20));
  CHECK(stands(drawer, "box front") == box(10.7, 4, 20, 405.3, 142, 32));
  CHECK(stands(drawer, "left side") == box(10.7, 4, 23, 22.7, 142, 470));
  CHECK(joint(drawer, "box front", "front").kind == JointKind::screws);
  CHECK(not_ok(drawer) == "");
}

TEST_CASE("Runners below the box ask for its inside width") {
  // 420 - 42 = 378 inside; over sides of 12 it is 402.
  const Assembly drawer = wood(drawer_mm(R"("runner": {"inside_less": 42, "below": 14, "above": 7,
                                                       "length": 450, "box_length": 440})"));
  CHECK(stands(drawer, "left side").low[0] == mm(7));
  CHECK(stands(drawer, "right side").high[0] == mm(409));
  CHECK(stands(drawer, "left side").low[1] == mm(12));
  CHECK(stands(drawer, "left side").high[1] == mm(141));
  CHECK(stands(drawer, "left side").high[2] == mm(460));
  CHECK(not_ok(drawer) == "");
}

TEST_CASE("Metal runners without their data are not guessed, and those too long are refused") {
  CHECK(refusal(drawer_mm(R"("runner": "metal")")).find("/runner: how wide the box must be") == 0);
  CHECK(refused_at(on_metal(R"("front": "in-one")")) == "/front");
  CHECK(refused_at(drawer_mm(R"("runner": {"side": 12.7, "length": 550})")) == "/runner/length");
  CHECK(refused_at(drawer_mm(R"("runner": {"side": 12.7, "inside_less": 42})")) ==
        "/runner/inside_less");
}

TEST_CASE("Of the heights that a shop makes sides in the highest that goes in is taken") {
  // 150 - 6 - 6 = 138 go in.
  const Worked worked = work(on_metal(R"("sides": {"heights": [80, 110, 140, 138, 90]})"));
  CHECK(stands(worked.assembly, "left side").extent(1) == mm(138));
  const Worked lower = work(on_metal(R"("sides": {"heights": [80, 110, 140]})"));
  CHECK(stands(lower.assembly, "left side").extent(1) == mm(110));
  const auto told = std::find_if(lower.assumed.begin(), lower.assumed.end(),
                                 [](const Assumed& it) { return it.key == "sides.height"; });
  REQUIRE(told != lower.assumed.end());
  CHECK(told->value == AssumedValue(mm(110)));
  CHECK(told->why == "the highest of \"heights\" that goes into 138 mm");
  // A height that is said goes before them.
  const Worked said = work(on_metal(R"("sides": {"height": 100, "heights": [80, 110]})"));
  CHECK(stands(said.assembly, "left side").extent(1) == mm(100));
}

TEST_CASE("Where none of a shop's heights goes in it is told by how much") {
  CHECK(refusal(on_metal(R"("sides": {"heights": [140, 160]})")) ==
        "/sides/heights: none of them goes in: above and below the sides is to be left 12 mm of "
        "the opening's 150 mm, and the lowest of them, 140 mm, is 2 mm too high");
}

TEST_CASE("A drawer alone has no sides of a cabinet for its runners' holes") {
  CHECK(refused_at(drawer_mm(R"("runner": {"side": 12.7, "holes": [37]})")) == "/runner/holes");
  CHECK(refused_at(drawer_mm(R"("runner": {"kind": "wood", "holes": [37]})")) == "/runner/holes");
}

TEST_CASE("A front lies over its opening, or has a lip that does") {
  const Assembly over = wood(on_metal(R"("meets": "overlay", "lap": {"left": 15, "right": 8})"));
  // Above and below as at the left.
  CHECK(over.size[0] == mm(443));
  CHECK(over.size[1] == mm(180));
  CHECK(not_ok(over) == "");
  const Assembly lipped = wood(drawer_mm(R"("meets": "rebate", "lap": 10)"));
  CHECK(lipped.size[0] == mm(440));
  CHECK(stands(lipped, "left side").low[0] == mm(10.5));
  CHECK(not_ok(lipped) == "");
  CHECK(refused_at(drawer_mm(R"("meets": "overlay", "front": "in-one")")) == "/front");
}

// ---- in a cabinet

TEST_CASE("A drawer's plan says where its box lies in the opening") {
  const auto made = job(on_metal());
  Spec spec;
  spec.set("fronts.drawer.runner.side", mm(12.7));
  spec.set("fronts.drawer.runner.length", mm(450));
  const PlannedDrawer planned = plan_drawer(
      spec, {mm(420), mm(150), mm(520), Meets::inset, Sides{mm(2), mm(2), mm(2), mm(2)}});
  REQUIRE(planned.problems.empty());
  CHECK(planned.plan.box == box(12.7, 6, 20, 407.3, 144, 470));
  CHECK(planned.plan.face == box(2, 2, 0, 418, 148, 20));
  CHECK(planned.plan.runner.travel == mm(450));
}

}  // namespace haunch::test
