// Panels: sizes, gaps, tongues, rebates and grain. The tier is 688 x 1706 mm between its stiles and
// rails throughout: 924 - 2 x 118, and 2054 - 118 - 230.
#include "vocabulary.h"

namespace haunch::test {
namespace {

/// A house door of one panel, 44 mm thick, with a groove of 15 x 13 (14.5 to 29.5).
std::string one_panel(std::string_view panel, std::string_view more = {}) {
  return house_mm(R"("thickness": 44, "stile_width": 118, "rail_widths": [118, 230],
                     "tenon_depth": 76, "groove_depth": 13, "groove": {"width": 15},
                     "panel": {)" +
                  std::string(panel) + "}" + (more.empty() ? "" : ", ") + std::string(more));
}

Piece panel(std::string_view keys) {
  return piece(wood(one_panel(keys)), "panel");
}

/// Play, room at the side and bite at the side of the panel, as designed.
Clearances side_design(std::string_view keys) {
  return joint(wood(one_panel(keys)), "left stile", "panel").design;
}

}  // namespace

TEST_CASE("A panel is its sight size and twice what its edges stand in the grooves") {
  // 688 + 2 x (13 - 4) = 706; 1706 + 2 x (13 - 2) = 1728.
  const Piece its = panel(R"("gap": {"across_grain": 4, "along_grain": 2})");
  CHECK(its.blank[0] == mm(1728));
  CHECK(its.blank[1] == mm(706));
  CHECK(its.place.origin[0] == mm(109));  // 118 - 9
  CHECK(its.place.origin[1] == mm(219));  // 230 - 11
  CHECK(its.place.axes == std::array{Axis::y, Axis::x, Axis::z});
  const Clearances side = side_design(R"("gap": {"across_grain": 4, "along_grain": 2})");
  CHECK(side.bottom == mm(4));
  CHECK(side.bite == mm(9));
}

TEST_CASE("One gap may be given for all edges, or for one way of the grain") {
  const Piece both = panel("\"gap\": 2");
  CHECK(both.blank[0] == mm(1728));
  CHECK(both.blank[1] == mm(710));
  const Worked worked = work(one_panel("\"gap\": {\"across_grain\": 4}"));
  CHECK(piece(worked.assembly, "panel").blank[0] == mm(1730));  // 1 along the grain: 1706 + 2 x 12
  CHECK(assumed(worked, "panel.gap.along_grain") == std::vector{mm(1)});
  CHECK(assumed_under(worked, "panel.gap.across_grain").empty());
}

TEST_CASE("Level grain turns the panel: its length lies along x, and so does the lesser gap") {
  // 688 + 2 x (13 - 1) = 712 long; 1706 + 2 x (13 - 3) = 1726 wide.
  const Assembly leaf = wood(one_panel("\"grain\": \"level\""));
  const Piece its = piece(leaf, "panel");
  CHECK(its.blank[0] == mm(712));
  CHECK(its.blank[1] == mm(1726));
  CHECK(its.place.axes == std::array{Axis::x, Axis::y, Axis::z});
  CHECK(its.place.origin[0] == mm(106));
  CHECK(its.place.origin[1] == mm(220));
  CHECK(joint(leaf, "left stile", "panel").design.bottom == mm(1));
  CHECK(joint(leaf, "top rail", "panel").design.bottom == mm(3));
  CHECK(joint(leaf, "top rail", "panel").design.bite == mm(10));
}

TEST_CASE("The usual gap gives way, so that a bite of 3 mm is left") {
  const auto gaps = [](std::string_view depth) {
    const Worked worked = work(cabinet_mm("\"groove_depth\": " + std::string(depth)));
    return std::vector{assumed(worked, "panel.gap.across_grain").front(),
                       assumed(worked, "panel.gap.along_grain").front()};
  };
  CHECK(gaps("6") == std::vector{mm(3), mm(1)});
  CHECK(gaps("5.9") == std::vector{mm(2.9), mm(1)});
  CHECK(gaps("3.5") == std::vector{mm(0.5), mm(0.5)});
  CHECK(gaps("3") == std::vector{mm(0), mm(0)});
  CHECK(gaps("2") == std::vector{mm(0), mm(0)});
}

TEST_CASE("In inches the bite that is left is 1/8") {
  const Worked worked = work(cabinet_in("\"groove_depth\": \"3/16\""));
  CHECK(assumed(worked, "panel.gap.across_grain") == std::vector{inch(0, 1, 16)});
  CHECK(assumed(worked, "panel.gap.along_grain") == std::vector{inch(0, 1, 32)});
}

TEST_CASE("A given gap is not touched, if it leaves no bite at all") {
  const Assembly leaf = wood(one_panel("\"gap\": 13"));
  CHECK(piece(leaf, "panel").blank[1] == mm(688));
  CHECK(joint(leaf, "left stile", "panel").design.bite == Length());
}

TEST_CASE("Without a thickness a panel is flat, as thick as its tongue") {
  const Piece its = panel("\"allowance\": 0.5");
  CHECK(its.blank[2] == mm(14.5));
  CHECK(its.place.origin[2] == mm(14.75));  // in the middle of the groove
  CHECK(its.features.empty());
}

TEST_CASE("A panel from its tongue to the groove's width stays flat, with its real clearance") {
  for (const double thickness : {14.6, 14.8, 15.0}) {
    const std::string keys = "\"thickness\": " + std::to_string(thickness);
    const Piece its = panel(keys);
    CHECK(its.features.empty());
    CHECK(its.blank[2] == mm(thickness));
    CHECK(its.place.origin[2] == mm(14.5 + (15 - thickness) / 2));
    CHECK(side_design(keys).cheeks == mm(15 - thickness));
  }
}

TEST_CASE("A thicker one is rebated at the back to its tongue, as wide as the groove is deep") {
  // 20 - 14.6 = 5.4 off the back; the tongue from 14.7 on, and so the face. 1730 x 708.
  const Assembly leaf = wood(one_panel("\"thickness\": 20"));
  const Piece its = piece(leaf, "panel");
  CHECK(its.blank == Triple{mm(1730), mm(708), mm(20)});
  CHECK(its.place.origin[2] == mm(14.7));
  CHECK(wood_differs(its, mm(0), mm(1730),
                     {box(0, 0, 0, 1730, 708, 14.6), box(13, 13, 14.6, 1717, 695, 20)}) == kNoWood);
  CHECK(joint(leaf, "left stile", "panel").design.cheeks == mm(0.4));
  CHECK(reasons(work(one_panel("\"thickness\": 20")), "panel.rebate").size() == 1);
}

TEST_CASE("The least over the groove's width is rebated") {
  CHECK(wood_differs(panel("\"thickness\": 15.001"), mm(0), mm(1730),
                     {box(0, 0, 0, 1730, 708, 14.6), box(13, 13, 14.6, 1717, 695, 15.001)}) ==
        kNoWood);
}

TEST_CASE("A rebate at the front lets the panel stand forward") {
  // The tongue from 14.7 on, 5.4 of panel before it: the face at 9.3.
  const Piece its = panel(R"("thickness": 20, "rebate": "front")");
  CHECK(its.place.origin[2] == mm(9.3));
  CHECK(wood_differs(its, mm(0), mm(1730),
                     {box(0, 0, 5.4, 1730, 708, 20), box(13, 13, 0, 1717, 695, 5.4)}) == kNoWood);
}

TEST_CASE("A rebate at both sides leaves the tongue in the middle") {
  // 2.7 on each side: the face at 14.7 - 2.7 = 12.
  const Piece its = panel(R"("thickness": 20, "rebate": "both")");
  CHECK(its.place.origin[2] == mm(12));
  CHECK(wood_differs(its, mm(0), mm(1730),
                     {box(0, 0, 2.7, 1730, 708, 17.3), box(13, 13, 0, 1717, 695, 2.7),
                      box(13, 13, 17.3, 1717, 695, 20)}) == kNoWood);
}

TEST_CASE("A level panel is rebated round like an upright one") {
  CHECK(wood_differs(panel(R"("thickness": 20, "grain": "level")"), mm(0), mm(712),
                     {box(0, 0, 0, 712, 1726, 14.6), box(13, 13, 14.6, 699, 1713, 20)}) == kNoWood);
}

TEST_CASE("A panel thinner than its tongue is set out as it is, and was designed otherwise") {
  const Piece its = panel("\"thickness\": 10");
  CHECK(its.blank[2] == mm(10));
  CHECK(its.place.origin[2] == mm(17));
  CHECK(its.features.empty());
  CHECK(side_design("\"thickness\": 10").cheeks == mm(0.4));  // its check fails: 5, not 0.4
}

TEST_CASE("A panel in a groove off the middle follows it") {
  const Assembly leaf = wood(house_mm(R"("groove": {"width": 9, "from_face": 10})"));
  CHECK(piece(leaf, "panel, tier 1").place.origin[2] == mm(10.2));
}

TEST_CASE("The reason of a rebate is not given where there is none") {
  CHECK(assumed_under(work(one_panel("\"thickness\": 15")), "panel.rebate").empty());
}

TEST_CASE("An allowance that leaves no tongue is refused") {
  CHECK(refused_at(one_panel("\"allowance\": 15")) == "/panel/allowance");
}

TEST_CASE("Panels that are none are refused") {
  // 688 + 2 x (13 - 357) = 0.
  CHECK(refused_at(one_panel("\"gap\": {\"across_grain\": 357}")) == "/panel/gap");
  // 26 wide: nothing but rebate from both edges.
  CHECK(refused_at(one_panel(R"("thickness": 20, "gap": {"across_grain": 344})")) == "/panel/gap");
}

}  // namespace haunch::test
