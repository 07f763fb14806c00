// What the sheet tells of tenons, those of rails, muntins and frames and loose ones.
#include "pages.h"

namespace haunch::test {

TEST_CASE("Tenons of one setting are told together, with their haunches and where they stand") {
  // 924 - 2 x 100 between the shoulders; the groove of 12 and a relish of 33 are off the rail.
  const std::string page =
      part_of(tenon_page, house(R"("groove_depth": 12, "tenon": {"relish": 33})"));
  INFO(page);
  CHECK(tells(page,
              "TENONS 14.85 thick, 65 deep, 14.575 from the face side with haunches 14.85 "
              "thick, 11.5 deep, 14.575 from the face side"));
  CHECK(tells(page, "on shoulder to shoulder tenon haunch"));
  CHECK(tells(page, "C top rail 724 12 to 67 67 to 100"));
  CHECK(tells(page, "D bottom rail 724 33 to 91, 130 to 188 0 to 33, 91 to 130"));
  CHECK(tells(page, "from the lower or left edge; both ends alike "));
}

TEST_CASE("A stub stands in the groove, and what it leaves there is told") {
  const std::string page = part_of(tenon_page, cupboard(R"("tenon_depth": 8, "groove_depth": 9)"));
  INFO(page);
  CHECK(tells(page,
              "8 deep, 6.075 from the face side a stub, which stands in the groove and "
              "leaves 1 below it"));
  CHECK(tells(page, "C top rail 280 9 to 60"));
}

TEST_CASE("Of twins the second is told from the face side too") {
  const std::string page =
      part_of(tenon_page, house_mm(R"("clearance": 3, "thickness": 60, "stile_width": 100,
                                      "rail_widths": [100, 200], "joint": "twin")"));
  INFO(page);
  CHECK(
      tells(page, "11.85 thick, 67 deep, 12.075 from the face side, and its twin 36.075 from it"));
}

TEST_CASE("A coped shoulder is told beside the square one that depths are from") {
  const std::string page =
      part_of(tenon_page, house(R"("groove_depth": 12, "edge": {"kind": "coped"})"));
  INFO(page);
  CHECK(tells(page,
              "deep from the back shoulder; at each end the face shoulder is coped over the "
              "moulding, and comes 9 nearer to the tenon's end"));
  CHECK(tells(page, "back shoulders face shoulders tenon"));
  CHECK(tells(page, "C top rail 724 742 12 to 67"));
}

TEST_CASE("Where both shoulders are coped, depths are from the sight line") {
  const std::string page = part_of(
      tenon_page, house(R"("groove_depth": 12, "edge": {"kind": "coped", "faces": "both"})"));
  INFO(page);
  CHECK(tells(page, "deep from the sight line, where the edge comes that the tenon goes in to"));
  CHECK(tells(page, "sight lines over the copes"));
  CHECK(tells(page, "C top rail 724 742 12 to 67"));
}

TEST_CASE("A back shoulder that fills a rebate is the long one") {
  const std::string page =
      part_of(tenon_page, house(R"("edge": {"kind": "rebated", "depth": 12})"));
  INFO(page);
  CHECK(tells(page,
              "deep from the face shoulder; at each end the back shoulder stands 12 nearer "
              "to the tenon's end, and fills the rebate"));
  CHECK(tells(page, "face shoulders back shoulders tenon"));
}

TEST_CASE("Shoulders past the sight edge are told where mouldings are mitred") {
  const std::string page =
      part_of(tenon_page, house(R"("groove_depth": 12, "edge": {"kind": "mitred"})"));
  INFO(page);
  CHECK(tells(page,
              "deep from the shoulders, which stand 9 past the sight edges, where the "
              "moulding is cut away"));
  CHECK(tells(page, "C top rail 742 12 to 67"));  // 724 and 9 at each end
}

TEST_CASE("A jamb's tenon is marked across its thickness, and from its foot") {
  // The leaf, 10 below it and 3 above; its rebate of 12 less at the face.
  const std::string page = part_of(
      tenon_page, frame(R"("head_joint": "tenoned", "stop": {"kind": "rebate"}, "clearance": 3)"));
  INFO(page);
  CHECK(tells(page, "at the upper end the face shoulder stands 12 nearer to the tenon's end"));
  CHECK(tells(page, "foot to back shoulder foot to face shoulder"));
  CHECK(tells(page, "tenon: across the thickness, of a jamb from its inner face"));
}

TEST_CASE("Loose tenons are told as pieces, those that are alike together") {
  const std::string page = part_of(loose_tenon_page, cupboard(R"("joint": "loose")"));
  INFO(page);
  CHECK(tells(page, "LOOSE TENONS, grain along their length"));
  CHECK(tells(page, "F G 80 25 7.85 40 2 3.925"));
  CHECK(part_of(loose_tenon_page, cupboard()).empty());
}

}  // namespace haunch::test
