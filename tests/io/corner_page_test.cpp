// What the sheet tells of dowels, half-laps, mitres and wedges.
#include "pages.h"

namespace haunch::test {

TEST_CASE(
    "Holes for dowels are told by their middles, in the edge of one and the end of the other") {
  // In the top rail 19 and 48 from its lower edge, which stands at 640.
  const std::string page = part_of(hole_page, cupboard(R"("joint": "dowel")"));
  INFO(page);
  CHECK(tells(page, "HOLES FOR DOWELS 8 wide, 26 deep, middle 10 from the face side"));
  CHECK(tells(page, "A B face edge foot 659, 688 C"));
  CHECK(tells(page, "C left end lower edge 19, 48 A"));
  CHECK(tells(page, "C right end lower edge 19, 48 B"));
}

TEST_CASE("Holes for dowels in a face are told along it and across") {
  // A side of 18: holes in its inner face 9 from either end, at 40, 160 and 280 from its front.
  const std::string page = part_of(hole_page, R"({"kind": "cabinet", "units": "mm",
      "size": {"width": 500, "height": 720, "depth": 320}, "case": {"joint": "dowel"}})");
  CHECK(tells(page, "8 wide, 12.5 deep, in faces"));
  CHECK(tells(page, "A right face foot 9 x 40, 160, 280 C"));
  CHECK(tells(page, "C D left end front edge 40, 160, 280 A"));
  // Of a drawer they stand one above the other.
  const std::string drawer = part_of(hole_page, R"({"kind": "drawer", "units": "mm",
      "opening": {"width": 420, "height": 150, "depth": 520}, "corner": {"front": "dowel"}})");
  CHECK(tells(drawer, "A inner face left end 6 x 31, 131.5 B"));
}

TEST_CASE("Dowels are counted by their sizes") {
  const std::string page = part_of(hole_page, cupboard(R"("joint": "dowel")"));
  INFO(page);
  CHECK(tells(page, "DOWELS thick long into each piece dowels 7.85 48 24 8"));
}

TEST_CASE("Of a half-lap the back of the stile and the face side of the rail are cut away") {
  const std::string page =
      part_of(lap_page, cupboard(R"("joint": "half-lap", "half_lap": {"from_face": 12})"));
  INFO(page);
  CHECK(tells(page,
              "HALF-LAPS, which meet 12 from the face side cut away, 8 deep: back of from "
              "begins ends long takes A B foot 640 700 60 C A B foot 0 80 80 D"));
  CHECK(tells(page,
              "cut away, 12 deep: face side of shoulder to shoulder left end right end C top "
              "rail 280 60 60 D bottom rail 280 60 60"));
}

TEST_CASE("Mitred pieces are told from long point to long point, and from short to short") {
  const std::string page = part_of(mitre_page, cupboard(R"("joint": "mitre")", "[60, 60]"));
  INFO(page);
  CHECK(tells(page, "MITRES, at 45 degrees both ends of long points short points"));
  CHECK(tells(page, "A left stile 700 580"));
  CHECK(tells(page, "C top rail 400 280"));
}

TEST_CASE("A spline is told with its slot, square to the mitre and along it") {
  const std::string page = part_of(mitre_page, cupboard(R"("joint": "mitre")", "[60, 60]"));
  INFO(page);
  CHECK(tells(page,
              "in each face a slot 8 wide, 6 from the face side, ~10.707 deep square to the "
              "mitre; along it from ~21.920 to ~65.660 from the sight corner"));
  CHECK(tells(page, "splines F G H I: grain across the mitre, 20 long, ~42.326 wide, 7.85 thick"));
}

TEST_CASE("Wedges are told with both ends of their taper") {
  const std::string page = part_of(wedge_page, house_mm(R"("clearance": 3, "stile_width": 100,
                                     "rail_widths": [100, 200], "joint": "through")"));
  INFO(page);
  CHECK(tells(page, "WEDGES, grain along their length, one at each edge of a tenon"));
  CHECK(tells(page, "75 14.85 3 0.4 F G H I J K L M N O P Q"));
}

}  // namespace haunch::test
