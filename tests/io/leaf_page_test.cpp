// What the sheet tells of a leaf as a whole: arches, lips, meeting stiles.
#include "pages.h"

namespace haunch::test {

TEST_CASE("An arched rail is told by rise and span, its groove and its panel by their own curves") {
  // (140^2 + 40^2) / (2 x 40) is the radius; 9 more at the groove's bottom, 3 less at the panel.
  const std::string page = part_of(leaf_page, cupboard(R"("arch": {"rise": 40})"));
  INFO(page);
  CHECK(tells(page,
              "underside of C: rise 40 over 280 from stile to stile, radius 265, ~294.998 "
              "along the curve; the blank is 100 wide, 60 are left at the crown"));
  CHECK(tells(page,
              "groove along it in C: 8 wide, 9 deep, 6 from the face side; its bottom has "
              "radius 274"));
  CHECK(tells(page, "top of E: radius 271"));
  CHECK(tells(page, "E has a gap of 3 below the groove's bottom there, and stands 6 in it"));
}

TEST_CASE("An arched top is struck from the leaf's middle, concentric with its opening") {
  // (465^2 + 80^2) / (2 x 80) is the opening's radius, and its middle that much below 2060 - 3.
  const std::string page = part_of(leaf_page, house_mm(R"("clearance": 3, "arch": {"rise": 80,
                                     "at": "top"})"));
  INFO(page);
  CHECK(tells(page, "top of A B C: radius ~1388.406"));
  CHECK(tells(page, "struck from the middle of the leaf ~665.594 above its foot"));
  CHECK(tells(page,
              "opening above it: rise 80 over 930, radius ~1391.406 about the same middle; 3 "
              "of gap square to the curve"));
}

TEST_CASE("A lip is told by the rebate that leaves it, edge by edge") {
  // Of the rebate's 10 the gap beside the leaf is 3.
  const std::string page =
      part_of(leaf_page, cupboard(R"("meets": "rebate", "lap": 10, "lip_thickness": 8)"));
  INFO(page);
  CHECK(tells(page, "10 wide, 12 deep from the back: left edge of A, foot of A, top end of A"));
  CHECK(tells(page, "the lip is 8 thick and lies over the frame left 7, right 7, head 7, foot 7"));
}

TEST_CASE("Meeting stiles say which leaf opens first, and what is left between them") {
  // Each rebate takes the lap and the gap beside it; 44 less 1.5, halved, is left of each.
  const std::string spec = R"({"kind": "door", "units": "mm", "clearance": 3, "thickness": 44,
      "opening": {"width": 1500, "height": 2060}, "leaves": 2, "meeting_clearance": 3,)";
  const std::string page = part_of(leaf_page, spec + R"("meeting_lap": 12, "meeting_rest": 1.5})");
  INFO(page);
  CHECK(tells(page, "MEETING STILES rebates 12 wide along the outer edges"));
  CHECK(tells(page, "B 22.75 deep from the face side, H 22.75 deep at the back"));
  CHECK(tells(page,
              "The right leaf laps before the other and opens first; 3 between their edges, "
              "1.5 in the thickness"));
  CHECK(tells(part_of(leaf_page, spec + R"("meeting_lap": 0})"), "square edges, 3 apart"));
}

TEST_CASE("A plain leaf has no page of its own") {
  CHECK(part_of(leaf_page, house()).empty());
}

}  // namespace haunch::test
