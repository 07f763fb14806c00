// One door worked through on paper: the side door to the mill yard. Opening 930 x 2060, 3 mm all
// round: a leaf of 924 x 2054 x 44. Stiles 118, rails 118, 195, 230, equal tiers, two panels in
// each; tenons 76 deep, groove 13, allowance 0.15.
//
//   cutter       44 / 3 = 14.67 to 0.4 x 44 = 17.6: the 15; walls (44 - 15) / 2 = 14.5
//   tenon        15 - 0.15 = 14.85, its near cheek at 14.5 + 0.075 = 14.575
//   mortise      76 + 2 = 78 deep, 0.4 longer than the tenon at each end
//   haunch       13 - 0.5 = 12.5 deep
//   rails        688 + 2 x 76 = 840 long; sight heights (2054 - 543) / 2 = 755.5
#include "vocabulary.h"

namespace haunch::test {
namespace {

Assembly side_door() {
  return wood(house_mm(R"("clearance": 3, "thickness": 44, "stile_width": 118,
                          "rail_widths": [118, {"width": 195, "top": 1180.5}, 230],
                          "panels": 4, "tenon_depth": 76,
                          "groove_depth": 13, "fit_allowance": 0.15)"));
}

/// The wood of a tenon or haunch at the left end of a rail 840 long, and of its like at the right.
std::vector<Box> at_both_ends(const std::vector<Box>& left) {
  std::vector<Box> both = left;
  for (const Box& each : left) {
    Box right = each;
    right.low[0] = mm(840) - each.high[0];
    right.high[0] = mm(840) - each.low[0];
    both.push_back(right);
  }
  return both;
}

void check_ends(std::string_view rail, const std::vector<Box>& left_end) {
  const Piece its = piece(side_door(), rail);
  const std::vector<Box> wanted = at_both_ends(left_end);
  CHECK(wood_differs(its, mm(0), mm(76), clipped(wanted, box(0, 0, 0, 76, 230, 44))) == kNoWood);
  CHECK(wood_differs(its, mm(764), mm(840), clipped(wanted, box(764, 0, 0, 840, 230, 44))) ==
        kNoWood);
}

}  // namespace

TEST_CASE("Side door: the stiles have a groove and four mortises each") {
  // Top rail: foot at 1936, tenon 1936 + 13 = 1949 to 2054 - 39 = 2015 (relish 118 / 3 = 39.33).
  // Lock rail: foot at 985.5, 195 - 26 = 169 for two tenons of 63.5 and a gap of 42 (169 / 4 =
  //   42.25): from 998.5 to 1062, and from 1104 to 1167.5.
  // Bottom rail: relish 230 / 3 = 76.67, 77; 230 - 77 - 13 = 140 for two of 52.5 and a gap of 35:
  //   from 77 to 129.5, and from 164.5 to 217.
  const std::vector<Box> left{
      box(1948.6, 40, 14.5, 2015.4, 118, 29.5), box(998.1, 40, 14.5, 1062.4, 118, 29.5),
      box(1103.6, 40, 14.5, 1167.9, 118, 29.5), box(76.6, 40, 14.5, 129.9, 118, 29.5),
      box(164.1, 40, 14.5, 217.4, 118, 29.5)};
  const Assembly leaf = side_door();
  CHECK(cuts(piece(leaf, "left stile"), "mortise") == left);
  CHECK(cuts(piece(leaf, "left stile"), "groove") ==
        std::vector{box(0, 105, 14.5, 2054, 118, 29.5)});
  // The right stile's sight edge is its low one.
  std::vector<Box> right = left;
  for (Box& each : right) {
    each.low[1] = mm(0);
    each.high[1] = mm(78);
  }
  CHECK(cuts(piece(leaf, "right stile"), "mortise") == right);
  CHECK(cuts(piece(leaf, "right stile"), "groove") == std::vector{box(0, 0, 14.5, 2054, 13, 29.5)});
}

TEST_CASE("Side door: the top rail's tenon is haunched above, and stops at its groove below") {
  check_ends("top rail", {box(0, 13, 14.575, 76, 79, 29.425),        // tenon 66 wide
                          box(63.5, 79, 14.575, 76, 118, 29.425)});  // haunch as long as the relish
}

TEST_CASE("Side door: the lock rail has two tenons and a haunch between them") {
  check_ends("lock rail",
             {box(0, 13, 14.575, 76, 76.5, 29.425), box(63.5, 76.5, 14.575, 76, 118.5, 29.425),
              box(0, 118.5, 14.575, 76, 182, 29.425)});
}

TEST_CASE("Side door: the bottom rail has two tenons, a haunch between and one below") {
  check_ends("bottom rail",
             {box(63.5, 0, 14.575, 76, 77, 29.425), box(0, 77, 14.575, 76, 129.5, 29.425),
              box(63.5, 129.5, 14.575, 76, 164.5, 29.425), box(0, 164.5, 14.575, 76, 217, 29.425)});
}

TEST_CASE("Side door: rails are grooved at their inner edges, muntins at both") {
  const Assembly leaf = side_door();
  CHECK(cuts(piece(leaf, "top rail"), "groove") == std::vector{box(0, 0, 14.5, 840, 13, 29.5)});
  CHECK(cuts(piece(leaf, "bottom rail"), "groove") ==
        std::vector{box(0, 217, 14.5, 840, 230, 29.5)});
  CHECK(cuts(piece(leaf, "lock rail"), "groove") ==
        std::vector{box(0, 0, 14.5, 840, 13, 29.5), box(0, 182, 14.5, 840, 195, 29.5)});
  CHECK(cuts(piece(leaf, "muntin, tier 1"), "groove") ==
        std::vector{box(0, 0, 14.5, 907.5, 13, 29.5), box(0, 77, 14.5, 907.5, 90, 29.5)});
}

TEST_CASE("Side door: a muntin's tenon is what its two grooves leave, without a haunch") {
  const Piece muntin = piece(side_door(), "muntin, tier 1");
  CHECK(wood_differs(muntin, mm(0), mm(76), {box(0, 13, 14.575, 76, 77, 29.425)}) == kNoWood);
  CHECK(wood_differs(muntin, mm(831.5), mm(907.5), {box(831.5, 13, 14.575, 907.5, 77, 29.425)}) ==
        kNoWood);
}

TEST_CASE("Side door: a panel is its sight size and twice what stands in the grooves") {
  // Across 299 + 2 x (13 - 3) = 319; along 755.5 + 2 x (13 - 1) = 779.5; 15 - 0.4 = 14.6 thick.
  // The right one begins at 118 + 299 + 90 - 10 = 497, the lower tier at 230 - 12 = 218; in the
  // middle of the groove: 14.5 + 0.2.
  const Piece panel = piece(side_door(), "panel 2, tier 2");
  CHECK(panel.blank == Triple{mm(779.5), mm(319), mm(14.6)});
  CHECK(panel.place.origin == Triple{mm(497), mm(218), mm(14.7)});
  CHECK(panel.features.empty());
}

TEST_CASE("Side door: a joint says what its joiner reads off") {
  const Joint top = joint(side_door(), "left stile", "top rail");
  CHECK(top.kind == JointKind::mortise_and_tenon);
  CHECK(top.heading.axis == Axis::x);
  CHECK_FALSE(top.heading.upwards);
  CHECK(top.design.cheeks == mm(0.15));
  CHECK(top.design.edges == mm(0.8));
  CHECK(top.design.bottom == mm(2));
  CHECK_FALSE(top.design.bite);
  REQUIRE(top.tenon);
  CHECK(top.tenon->thickness == mm(14.85));
  CHECK(top.tenon->width == mm(66));
  CHECK(top.tenon->depth == mm(76));
  CHECK(top.tenon->from_face == mm(14.575));
  CHECK(top.tenon->each.front().from_edge == mm(13));
  REQUIRE(top.tenon->haunches.size() == 1);
  CHECK(top.tenon->haunches[0].from_edge == mm(79));
  CHECK(top.tenon->haunches[0].width == mm(39));
  CHECK(top.tenon->haunch_depth == mm(12.5));
  REQUIRE(top.mortise);
  CHECK(top.mortise->width == mm(15));
  CHECK(top.mortise->depth == mm(78));
  CHECK(top.mortise->from_face == mm(14.5));
  CHECK(top.mortise->each.front().from_foot == mm(1948.6));
  CHECK(top.mortise->each.front().length == mm(66.8));
}

TEST_CASE("Side door: a divided tenon lists each, lowest first") {
  const Joint lock = joint(side_door(), "right stile", "lock rail");
  REQUIRE(lock.tenon->each.size() == 2);
  CHECK(lock.tenon->width == mm(63.5));
  CHECK(lock.tenon->each[0].from_edge == mm(13));
  CHECK(lock.tenon->each[1].from_edge == mm(118.5));
  REQUIRE(lock.mortise->each.size() == 2);
  CHECK(lock.mortise->each[0].from_foot == mm(998.1));
  CHECK(lock.mortise->each[1].from_foot == mm(1103.6));
  CHECK(lock.mortise->each[1].length == mm(64.3));
}

TEST_CASE("Side door: each edge of a panel is a joint of its own") {
  const Assembly leaf = side_door();
  const Joint side = joint(leaf, "left stile", "panel 1, tier 1");
  CHECK(side.kind == JointKind::panel_in_groove);
  CHECK(side.design.cheeks == mm(0.4));
  CHECK(side.design.bottom == mm(3));
  CHECK(side.design.bite == mm(10));
  CHECK_FALSE(side.tenon);
  CHECK_FALSE(side.mortise);
  const Joint head = joint(leaf, "top rail", "panel 1, tier 1");
  CHECK(head.design.bottom == mm(1));
  CHECK(head.design.bite == mm(12));
  CHECK(joint(leaf, "muntin, tier 1", "panel 1, tier 1").heading.upwards);
  CHECK_FALSE(joint(leaf, "lock rail", "panel 1, tier 1").heading.upwards);
  // 6 ends of rails, 4 of muntins, 4 panels with 4 edges.
  CHECK(leaf.joints.size() == 26);
}

TEST_CASE("Side door: a groove names the panels in it, never a mortise and tenon") {
  const Assembly leaf = side_door();
  for (const Piece& each : leaf.pieces)
    for (const Feature& feature : each.features)
      for (const std::size_t number : feature.joints)
        CHECK((leaf.joints[number].kind == JointKind::panel_in_groove) ==
              (feature.kind == FeatureKind::groove));
  const Piece stile = piece(leaf, "left stile");
  CHECK(stile.features.front().kind == FeatureKind::groove);
  CHECK(stile.features.front().joints.size() == 2);
}

}  // namespace haunch::test
