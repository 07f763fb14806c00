// What the sheet tells of mortises.
#include "pages.h"

namespace haunch::test {

TEST_CASE("A mortise is told by its setting, and along its stile from the foot") {
  // The top rail's tenon is 12 to 67 of its 100: from 1954 + 12 - 0.4 to 1954 + 67 + 0.4; the ends
  // of a cutter of 15 take 15 of that.
  const std::string page =
      part_of(mortise_page, house(R"("groove_depth": 12, "tenon": {"relish": 33})"));
  INFO(page);
  CHECK(tells(page, "MORTISES 15 wide, 67 deep, 14.5 from the face side"));
  CHECK(tells(page, "A B face foot 1965.6 2021.4 55.8 40.8 C J1 J2"));
  CHECK(tells(page, "deep: from the edge as it is before a groove is worked there"));
  CHECK(tells(page,
              "square: the widest tenon with square edges that goes in between the round ends"));
  CHECK(tells(page, "for a wider one square the ends, or round the tenon's edges."));
}

TEST_CASE("Each mortise of a divided tenon is a row, lowest first") {
  // The tenons are 33 to 91 and 130 to 188 of the bottom rail, each with 0.4 of play at its ends.
  const std::string page =
      part_of(mortise_page, house(R"("groove_depth": 12, "tenon": {"relish": 33})"));
  INFO(page);
  CHECK(tells(page,
              "A B face foot 32.6 91.4 58.8 43.8 D J3 J4 "
              "A B face foot 129.6 188.4 58.8 43.8 D J3 J4"));
}

TEST_CASE("In a rail a mortise is told from the left end, and from the shoulder") {
  // Half of what is between the stiles, 724, less half of the muntin's 90, and its groove of 12.
  const std::string page = part_of(mortise_page, house(R"("groove_depth": 12, "panels": 2)"));
  INFO(page);
  CHECK(tells(page, "square shoulder takes joint"));
  CHECK(tells(page, "C lower left end 393.6 460.4 66.8 51.8 328.6 E J5"));
  CHECK(tells(page, "shoulder: where it begins, told from there"));
}

TEST_CASE("The shoulder that a mortise is told from is named where a long one stands beside it") {
  const std::string page =
      part_of(mortise_page, house(R"("groove_depth": 12, "panels": 2, "edge": {"kind": "coped"})"));
  INFO(page);
  CHECK(tells(page, "square back shoulder takes"));
  CHECK(tells(page, "before a moulding or a groove is worked there"));
}

TEST_CASE("Twin mortises are two settings") {
  const std::string page =
      part_of(mortise_page, house_mm(R"("clearance": 3, "thickness": 60, "stile_width": 100,
                                        "rail_widths": [100, 200], "joint": "twin")"));
  INFO(page);
  CHECK(tells(page, "12 wide, 69 deep, 12 from the face side"));
  CHECK(tells(page, "12 wide, 69 deep, 36 from the face side"));
}

TEST_CASE("A mortise for a through tenon is opened for its wedges from where that comes out") {
  // Wedges of 3, tapered to 0.4: at each end 2.6 more, three quarters of the way in.
  const std::string page = part_of(mortise_page, house_mm(R"("clearance": 3, "stile_width": 100,
                                     "rail_widths": [100, 200], "joint": "through")"));
  INFO(page);
  CHECK(tells(page, "right through 100 of wood"));
  CHECK(tells(page,
              "opened for wedges: 2.6 more at each end where it comes out, running out to "
              "nothing 75 in"));
}

TEST_CASE("The slot of a bridle is open, and round at one end alone") {
  // 60 to 80 of the bottom rail are its groove; half a cutter of 8 rounds the one end.
  const std::string page = part_of(mortise_page, cupboard(R"("joint": "bridle")"));
  INFO(page);
  CHECK(
      tells(page, "right through 60 of wood, 6 from the face side, open at the end of its piece"));
  CHECK(tells(page, "A B face foot 0.0 71.4 71.4 67.4 D"));
}

TEST_CASE("Mortises of loose tenons tell what goes in between their round ends") {
  const std::string page = part_of(mortise_page, cupboard(R"("joint": "loose")"));
  INFO(page);
  CHECK(tells(page, "8 wide, 42 deep, 6 from the face side, ends round by a cutter of 8"));
  CHECK(tells(page, "C left end lower edge 14.6 40.4 25.8"));
  CHECK(tells(page, "square: the widest tenon with square edges"));
  CHECK_FALSE(tells(page, "for a wider one"));
}

TEST_CASE("Haunches that no groove takes have seats beside the mortises") {
  // A third of the top rail, at the head; the rebate of 12 and the haunch's own 10 and 2 of play.
  const std::string spec = house(R"("edge": {"kind": "rebated", "depth": 12})");
  const std::string page = part_of(haunching_page, spec);
  INFO(page);
  CHECK(tells(page, "HAUNCHINGS, beside the mortises, deep from the same edge 15 wide, 24 deep"));
  CHECK(tells(page, "A B face foot 2021.0 2054.0 33"));
  CHECK(part_of(haunching_page, house()).empty());
}

TEST_CASE("A frame's mortises are in faces, and say so in place of an edge") {
  const std::string page = part_of(mortise_page, frame(R"("head_joint": "tenoned")"));
  INFO(page);
  CHECK(tells(page, "C lower face left end"));
  CHECK_FALSE(tells(page, "in edge"));
}

}  // namespace haunch::test
