// Glazing bars: panes and bars worked by hand, where two cross, and what is refused.
#include "findings.h"
#include "joint_checks.h"
#include "vocabulary.h"

namespace haunch::test {
namespace {

/// A house door of one light, 44 mm thick: 688 wide and 1706 high between its stiles and rails, its
/// rebate 13 deep behind a front wall of 10.
std::string barred(std::string_view panel, std::string_view more = {}) {
  return house_mm(R"("thickness": 44, "stile_width": 118, "rail_widths": [118, 230],
                     "tenon_depth": 76, "groove_depth": 13, "groove": {"width": 15, "from_face": 10},
                     "panel": {"kind": "glass", "thickness": 6, )" +
                  std::string(panel) + "}" + (more.empty() ? "" : ", ") + std::string(more));
}

constexpr std::string_view kSix = R"("panes": {"across": 2, "up": 3})";

}  // namespace

TEST_CASE("Panes of one light are alike: what its bars leave of the sight size, and their cover") {
  // Bars are 2 x 13 + 8 = 34 wide. (688 - 34) / 2 = 327 and (1706 - 68) / 3 = 546 in sight; glass
  // goes 13 - 3 behind each edge.
  const Assembly leaf = wood(barred(kSix));
  CHECK(count_role(leaf, "glass") == 6);
  CHECK(count_role(leaf, "bead") == 24);
  for (const Piece& pane : leaf.pieces)
    if (pane.role == Role::glass) CHECK(pane.blank == Triple{mm(566), mm(347), mm(6)});
  // Row by row from the foot: the sixth is at the upper right.
  CHECK(piece(leaf, "glass, pane 6").place.origin ==
        Triple{mm(118 + 327 + 34 - 10), mm(230 + 2 * (546 + 34) - 10), mm(11.5)});
  CHECK(doubted(leaf) == kNothing);
}

TEST_CASE("A bar enters the frame 12 past the rebate, in line with the groove") {
  const Assembly leaf = wood(barred(kSix));
  CHECK(piece(leaf, "upright bar").blank == Triple{mm(1706 + 50), mm(34), mm(44)});
  CHECK(piece(leaf, "level bar 2").place.origin == Triple{mm(93), mm(1356), mm(0)});
  const Joint joint_there = joint(leaf, "left stile", "level bar 1");
  CHECK(joint_there.tenon->width == mm(8));
  CHECK(joint_there.tenon->depth == mm(25));
  CHECK(joint_there.tenon->longer_at_back == mm(13));
  // The lower bar stands from 776 up; its tongue begins 13 higher.
  CHECK(joint_there.mortise->each.front().from_foot == mm(776 + 13 - 0.4));
  CHECK(joint_there.mortise->depth == mm(27));
  CHECK(joint_there.mortise->from_face == mm(10));
}

TEST_CASE("Where bars cross the upright keeps its face and the other its back") {
  const Assembly leaf = wood(barred(kSix));
  const Piece upright = piece(leaf, "upright bar");
  const std::vector<Box> behind = cuts(upright, "lap");
  REQUIRE(behind.size() == 2);
  // Half of 44; over the other's tongue of 8 with half of 0.15 at each side.
  CHECK(behind[0] == box(583.925, 0, 22, 592.075, 34, 44));
  const std::vector<Box> before = cuts(piece(leaf, "level bar 1"), "lap");
  REQUIRE(before.size() == 2);
  // Its face over the whole width of the upright, 352 from its left end; behind that its tongue.
  CHECK(before[0] == box(352, 0, 0, 386, 34, 10));
  CHECK(before[1] == box(364.925, 0, 10, 373.075, 34, 22));
}

TEST_CASE("Between rebated edges bars and panes lie as behind a groove that is open to the back") {
  // Rebates 13 deep and 30 wide leave 14 at the face.
  const Assembly leaf = wood(
      house_mm(R"("thickness": 44, "stile_width": 118, "rail_widths": [118, 230], "tenon_depth": 76,
                  "edge": {"kind": "rebated", "depth": 13, "width": 30}, "mortise": {"width": 15, "from_face": 14},
                  "panel": {"kind": "glass", "thickness": 6, "panes": {"across": 2, "up": 3}})"));
  CHECK(piece(leaf, "upright bar").blank == Triple{mm(1706 + 50), mm(34), mm(44)});
  CHECK(joint(leaf, "left stile", "level bar 1").tenon->longer_at_back == mm(13));
  CHECK(joint(leaf, "left stile", "level bar 1").mortise->from_face == mm(14));
  for (const Piece& pane : leaf.pieces)
    if (pane.role == Role::glass) CHECK(pane.blank == Triple{mm(566), mm(347), mm(6)});
  CHECK(doubted(leaf) == kNothing);
}

TEST_CASE("Level bars keep their face where the spec says so") {
  const Assembly leaf =
      wood(barred(R"("panes": {"across": 2, "up": 2}, "bars": {"through": "level"})"));
  CHECK(cuts(piece(leaf, "level bar"), "lap").front().low[2] == mm(22));
  CHECK(cuts(piece(leaf, "upright bar"), "lap").front().low[2] == mm(0));
  CHECK(doubted(leaf) == kNothing);
}

TEST_CASE("Odd steps go to the panes at the right and at the head") {
  const Assembly leaf = wood(barred(R"("panes": {"across": 4})"));
  // 688 - 3 x 34 = 586, in four.
  CHECK(piece(leaf, "glass, pane 1").blank[1] == mm(146.5 + 20));
  CHECK(piece(leaf, "glass, pane 4").place.origin[0] == mm(118 + 3 * (146.5 + 34) - 10));
}

TEST_CASE("Beads of a slender bar are narrower, and their mitres go from corner to corner") {
  // Rebates of 8 in a bar of 24: the pane at the left is 13 - 3 behind the stile and 8 - 3 behind
  // the bar.
  const Assembly leaf =
      wood(barred(R"("panes": {"across": 2}, "bars": {"rebate": 8, "width": 24})"));
  CHECK(piece(leaf, "glass, pane 1").blank[1] == mm(332 + 10 + 5));
  CHECK(piece(leaf, "right bead, pane 1").blank[1] == mm(8));
  const Piece head = piece(leaf, "head bead, pane 1");
  CHECK(head.blank[0] == mm(332 + 13 + 8));
  CHECK(room(head.features[0].prisms[0]) == Room{mm(0), mm(13), mm(0), mm(13)});
  CHECK(room(head.features[0].prisms[1]) == Room{mm(345), mm(353), mm(0), mm(13)});
  CHECK(doubted(leaf) == kNothing);
}

TEST_CASE("A bar whose rebates leave under 6 mm is doubted") {
  const auto left = [](double tongue) {
    return wood(barred(R"("panes": {"across": 2}, "bars": {"width": )" +
                       decimal(mm(26 + tongue), Unit::mm) + "}"));
  };
  CHECK(finding(left(6), "bar-tongue").status == Status::ok);
  CHECK(finding(left(5.5), "bar-tongue").status == Status::caution);
}

TEST_CASE("Bars in a muntin and in a rail between two lights end in these") {
  const Assembly leaf = wood(barred(R"("panes": {"up": 2})", R"("panels": 2, "muntin_width": 60)"));
  CHECK(joint(leaf, "muntin", "level bar 1").mortise->from_shoulder.has_value());
  CHECK(doubted(leaf) == kNothing);
}

TEST_CASE("Safety glazing goes by the widest pane, not by the light") {
  std::string told;
  for (const Caution& caution : work(barred(kSix)).cautions)
    if (caution.about == "safety glazing") told = caution.words;
  CHECK(told.find("the widest here is 347 mm") != std::string::npos);
}

TEST_CASE("Bars are refused where there is nothing to divide, or nothing left") {
  CHECK(refused_at(barred(R"("bars": {"width": 30})")) == "/panel/bars/width");
  CHECK(refused_at(barred(R"("panes": {"across": 2}, "bars": {"width": 26})")) ==
        "/panel/bars/width");
  CHECK(refused_at(barred(R"("panes": {"across": 2}, "bars": {"rebate": 3})")) ==
        "/panel/bars/rebate");
  // 688 - 10 x 34 is 348, eleven panes of 31.
  CHECK(refused_at(barred(R"("panes": {"across": 11})")) == "/panel/panes/across");
  // A tongue of 3 wants a mortise 3.8 long, and the least cutter is 5 wide.
  CHECK(refused_at(barred(R"("panes": {"across": 2}, "bars": {"width": 29})")) ==
        "/panel/bars/width");
  CHECK(refused_at(barred(R"("panes": {"across": 2}, "bars": {"tenon_depth": 13})")) ==
        "/panel/bars/tenon_depth");
  CHECK(refused_at(house_mm(R"("panel": {"panes": {"up": 2}})")) == "/panel/panes/up");
}

}  // namespace haunch::test
