// Panels and muntins across a tier. The stiles are 118 mm in a leaf of 924: 688 mm between them.
#include "vocabulary.h"

namespace haunch::test {
namespace {

/// The left edges of all muntins, tier by tier.
std::vector<Length> muntin_edges(const Assembly& leaf) {
  std::vector<Length> edges;
  for (const Piece& piece : leaf.pieces)
    if (piece.role == Role::muntin) edges.push_back(piece.place.origin[0]);
  return edges;
}

std::string tiered(std::string_view panels, std::string_view more = {}) {
  return house_mm(R"("stile_width": 118, "rail_widths": [118, {"width": 195, "top": 1180.5}, 230],
                     "tenon_depth": 76, "groove_depth": 13, "panels": )" +
                  std::string(panels) + (more.empty() ? "" : ", ") + std::string(more));
}

}  // namespace

TEST_CASE("A count of panels is shared evenly over the tiers") {
  const Assembly leaf = wood(tiered("4"));
  CHECK(count_role(leaf, "panel") == 4);
  CHECK(count_role(leaf, "muntin") == 2);
  CHECK(count_role(wood(tiered("2")), "muntin") == 0);
}

TEST_CASE("Sight widths in a tier are equal") {
  // (688 - 90) / 2 = 299: the muntin from 118 + 299 = 417 on.
  CHECK(muntin_edges(wood(tiered("4"))) == std::vector{mm(417), mm(417)});
  // 80 wide: (688 - 80) / 2 = 304.
  CHECK(muntin_edges(wood(tiered("4", "\"muntin_width\": 80"))) == std::vector{mm(422), mm(422)});
}

TEST_CASE("Odd steps go to the openings on the right") {
  // 688 - 2 x 90 = 508 mm in three: 508 x 1 600 000 = 3 x 270 933 333 + 1 steps.
  const Length each = Length::from_steps(270'933'333);
  const Assembly leaf = wood(tiered(R"({"across": [3, 1]})"));
  CHECK(muntin_edges(leaf) == std::vector{mm(118) + each, mm(208) + each * 2});
  const Length last = mm(806) - (mm(208) + each * 2 + mm(90));
  CHECK(last == each + kStep);
}

TEST_CASE("Tiers may differ: one number for each, from the top") {
  const Assembly leaf = wood(tiered(R"({"across": [1, 3]})"));
  CHECK(count_role(leaf, "panel") == 4);
  CHECK(piece(leaf, "muntin 1, tier 2").place.origin[1] < mm(985.5));
  CHECK_THROWS(piece(leaf, "muntin, tier 1"));
}

TEST_CASE("A single number across is meant for every tier") {
  CHECK(muntin_edges(wood(tiered(R"({"across": 2})"))) == muntin_edges(wood(tiered("4"))));
}

TEST_CASE("A muntin runs between its rails, with a tenon at each end") {
  // The sight height is 755.5 (see the rails), with two tenons of 76: 907.5.
  // The lower tier begins at 230: the muntin's end is at 230 - 76 = 154.
  const Piece muntin = piece(wood(tiered("4")), "muntin, tier 2");
  CHECK(muntin.blank == Triple{mm(907.5), mm(90), mm(44)});
  CHECK(muntin.place.origin == Triple{mm(417), mm(154), Length()});
  CHECK(muntin.place.axes == std::array{Axis::y, Axis::x, Axis::z});
}

TEST_CASE("A muntin's mortise in a rail is measured from the rail's end and from its shoulder") {
  // The muntin stands at 417..507; 13 off each grooved edge: tenon 430..494, mortise 429.6..494.4.
  // The rail begins at 118 - 76 = 42: 387.6 from its end, and 76 less from its shoulder.
  const Assembly leaf = wood(tiered("4"));
  const Joint joint = test::joint(leaf, "lock rail", "muntin, tier 1");
  REQUIRE(joint.mortise);
  CHECK(joint.mortise->each.front().from_foot == mm(387.6));
  CHECK(joint.mortise->each.front().length == mm(64.8));
  CHECK(joint.mortise->from_shoulder == mm(311.6));
  CHECK_FALSE(test::joint(leaf, "left stile", "top rail").mortise->from_shoulder);
  // Sunk 78 from the rail's upper edge, 195.
  CHECK(cuts(piece(leaf, "lock rail"), "mortise") ==
        std::vector{box(387.6, 117, 14.5, 452.4, 195, 29.5), box(387.6, 0, 14.5, 452.4, 78, 29.5)});
}

TEST_CASE("Panels that do not share evenly are refused, with what would do") {
  CHECK(refused_at(tiered("5")) == "/panels");
  CHECK(refused_at(tiered(R"({"across": [1, 2, 3]})")) == "/panels/across");
}

TEST_CASE("Muntins that leave no width for panels are refused") {
  // 7 x 90 = 630 leave 58 for eight panels; 8 x 90 = 720 leave nothing.
  CHECK(refusal(tiered(R"({"across": 8})")).empty());
  CHECK(refused_at(tiered(R"({"across": 9})")) == "/panels");
  CHECK(refused_at(tiered(R"({"across": 2})", "\"muntin_width\": 688")) == "/muntin_width");
}

TEST_CASE("A step of sight width for each panel is the least") {
  // 688 mm less two steps, less one step.
  const auto one_muntin = [](std::string_view width) {
    return refused_at(
        tiered(R"({"across": 2})", "\"muntin_width\": \"" + std::string(width) + " mm\""));
  };
  CHECK(one_muntin("687.99999875").empty());
  CHECK(one_muntin("687.999999375") == "/muntin_width");
}

TEST_CASE("Mullion is another word for muntin, but not both at once") {
  CHECK(muntin_edges(wood(tiered("4", "\"mullion_width\": 80"))) ==
        muntin_edges(wood(tiered("4", "\"muntin_width\": 80"))));
  const Assembly leaf = wood(tiered("4", R"("tenon": {"mullion_depth": 40})"));
  CHECK(joint(leaf, "lock rail", "muntin, tier 1").tenon->depth == mm(40));
  CHECK(refused_at(tiered("4", R"("mullion_width": 80, "muntin_width": 80)")) == "/mullion_width");
}

// Depth of a muntin's tenon when the spec is silent: as the rails', but leaving 5 mm behind the
// mortise, and between two mortises that meet across a rail. (Mission Furniture, Building
// Construction: muntins are stubbed where the rail is narrow.)

namespace {

/// A cabinet door of 57 mm stiles: rail tenons 38, grooves 9.
std::vector<Length> muntin_depth(std::string_view rails, std::string_view panels) {
  return assumed(work(cabinet_mm("\"rail_widths\": " + std::string(rails) +
                                 ", \"panels\": " + std::string(panels))),
                 "tenon.muntin_depth");
}

}  // namespace

TEST_CASE("A muntin's tenon is as deep as the rails', where there is wood enough") {
  CHECK(muntin_depth("[57, 57]", "2") == std::vector{mm(38)});
}

TEST_CASE("In an end rail it leaves 5 mm behind its mortise, down to whole millimetres") {
  CHECK(muntin_depth("[40, 57]", "2") == std::vector{mm(33)});    // 40 - 5 - 2 for the bottom
  CHECK(muntin_depth("[40.9, 57]", "2") == std::vector{mm(33)});  // 33.9
  CHECK(muntin_depth("[57, 40]", "2") == std::vector{mm(33)});
  CHECK(muntin_depth("[45, 57]", "2") == std::vector{mm(38)});  // 45 - 7 = 38, just as deep
}

TEST_CASE("A rail without muntins does not matter to the muntins") {
  CHECK(muntin_depth("[57, 57, 30]", R"({"across": [2, 1]})") == std::vector{mm(38)});
}

TEST_CASE("Where muntins meet across a middle rail, 5 mm are left between their mortises") {
  CHECK(muntin_depth("[57, 60, 57]", "4") == std::vector{mm(25)});  // (60 - 5) / 2 - 2 = 25.5
}

TEST_CASE("In a middle rail with muntins on one side, 5 mm are left before the other groove") {
  const char* above = R"({"across": [2, 1]})";
  const char* below = R"({"across": [1, 2]})";
  CHECK(muntin_depth("[57, 50, 57]", above) == std::vector{mm(34)});  // 50 - 9 - 5 - 2
  CHECK(muntin_depth("[57, 50, 57]", below) == std::vector{mm(34)});
}

TEST_CASE("A muntin's tenon is never less than the groove, where it is a stub") {
  CHECK(muntin_depth("[57, 27, 57]", "4") == std::vector{mm(9)});  // (27 - 5) / 2 - 2
  CHECK(muntin_depth("[57, 25, 57]", "4") == std::vector{mm(9)});  // 8 would be less than 9
  const Assembly leaf = wood(cabinet_mm(R"("rail_widths": [57, 25, 57], "panels": 4)"));
  CHECK(joint(leaf, "middle rail", "muntin, tier 1").kind == JointKind::stub_tenon);
  CHECK(joint(leaf, "left stile", "middle rail").kind == JointKind::mortise_and_tenon);
}

TEST_CASE("An inch job leaves 5 mm behind the mortise too, the larger of 5 mm and 3/16 in") {
  // 1 3/4 in = 44.45 mm, less 5, less 1/16 in = 1.5875 for the bottom: 37.8625 mm = 1.4906 in; down
  // to 1 7/16. (3/16 in alone would leave 1 1/2, the rails' own depth.)
  const Worked worked = work(cabinet_in(R"("rail_widths": ["1 3/4", "2 1/4"], "panels": 2)"));
  CHECK(assumed(worked, "tenon.muntin_depth") == std::vector{inch(1, 7, 16)});
}

TEST_CASE("A muntin's tenon that goes through its rail is refused") {
  CHECK(refused_at(cabinet_mm(R"("panels": 2, "tenon": {"muntin_depth": 57})")) ==
        "/tenon/muntin_depth");
}

TEST_CASE("More parts than can be managed are refused") {
  CHECK(refused_at(door_spec(R"("units": "mm", "opening": {"width": 90000, "height": 90000})",
                             R"("rail_widths": [10, 10], "panels": 50000)")) == "/panels");
}

TEST_CASE("Muntins whose mortises pass each other along the rail need not be stubbed for it") {
  // Inside 1000 - 6 - 200 = 794: above 131 and 90 in turn, below (794 - 180) / 3. Their mortises
  // pass 6.87 mm apart, more than 5; so only the groove of the other edge is in the way: 83 - 12 -
  // 5 - 2 = 64.
  const Worked door = work(
      R"({"kind": "door", "units": "mm", "opening": {"width": 1000, "height": 2060}, "panels": {"across": [4, 3]},
      "rail_widths": [100, 83, 150], "muntin_width": 90})");
  REQUIRE(assumed_under(door, "tenon.muntin_depth").size() == 1);
  CHECK(assumed_under(door, "tenon.muntin_depth")[0].value.length == mm(64));
}

}  // namespace haunch::test
