// What the sheet tells of work along edges and on faces: grooves, rebates, mouldings, panels.
#include "pages.h"

namespace haunch::test {

TEST_CASE("A groove is told by its setting and by all edges that it is run along") {
  const std::string page = part_of(groove_page, house(R"("groove_depth": 12, "panels": 2)"));
  INFO(page);
  CHECK(tells(page, "GROOVES, the whole length 15 wide, 12 deep, 14.5 from the face side"));
  CHECK(tells(page,
              "face edge of A B; left edge of E; lower edge of C; right edge of E; upper "
              "edge of D"));
}

TEST_CASE("A stopped groove says from where to where it goes") {
  // A half-lapped stile shows its end: 9 deep in from the sight edges at 80 and 640.
  const std::string page = part_of(groove_page, cupboard(R"("joint": "half-lap")"));
  INFO(page);
  CHECK(tells(page, "GROOVES, the whole length unless they are stopped"));
  CHECK(tells(page, "face edge, stopped: from 71 to 649 from the foot, of A B"));
  CHECK(tells(page, "lower edge, stopped: from 51 to 349 from the left end, of C"));
}

TEST_CASE("Rebates of a frame tell what they leave at the face side") {
  const std::string spec = house(R"("edge": {"kind": "rebated", "depth": 12})");
  const std::string page = part_of(edge_rebate_page, spec);
  INFO(page);
  CHECK(tells(page,
              "REBATES of the frame, at the back, the whole length 12 deep from the edge, "
              "29.5 wide from the back, leaving 14.5 at the face side face edge of A B"));
  CHECK(part_of(groove_page, spec).empty());
}

TEST_CASE("A moulding is told by its outline, its sizes and its faces") {
  const std::string coped = part_of(
      moulding_page, house(R"("groove_depth": 12, "edge": {"kind": "coped", "faces": "both"})"));
  INFO(coped);
  CHECK(tells(coped, "MOULDINGS, the whole length, after the ends are coped"));
  CHECK(tells(coped,
              "ovolo of radius 9, 9 wide on the face and 10 deep, with a fillet of 1 under "
              "the face; on both faces"));
  const std::string bevel = part_of(
      moulding_page, house(R"("groove_depth": 12, "edge": {"kind": "coped", "profile": "bevel",
                              "width": 8, "depth": 7, "fillet": 0})"));
  INFO(bevel);
  CHECK(tells(bevel, "bevel, 8 wide on the face and 7 deep; at the face side"));
}

TEST_CASE("Where a moulding is cut away for shoulders is told joint by joint") {
  // The top rail from 1954 to the head; of the rails the muntin's 90 in the middle of 854 + 18.
  const std::string spec = house(R"("groove_depth": 12, "panels": 2, "edge": {"kind": "mitred"})");
  const std::string page = part_of(moulding_mitre_page, spec);
  INFO(page);
  CHECK(tells(page, "A face foot 1954 2054 9 its beginning C"));
  CHECK(tells(page, "A face foot 0 200 9 its end D"));
  CHECK(tells(page, "C lower left end 391 481 9 both E"));
  CHECK(tells(page, "at the edge from 9 behind its shoulder"));
  CHECK_FALSE(tells(part_of(moulding_page, spec), "coped"));
}

TEST_CASE("A thick panel is rebated all round at the face that it is told of") {
  const std::string page = part_of(rebate_page, cupboard(R"("panel": {"thickness": 14})"));
  INFO(page);
  CHECK(tells(page, "REBATES, all round 9 wide, 6.4 deep back of E"));
}

TEST_CASE("A raised panel is told from its edge up to its field") {
  const std::string bevel =
      part_of(raise_page, cupboard(R"("panel": {"thickness": 14, "raised": "front"})"));
  INFO(bevel);
  CHECK(tells(bevel,
              "35 wide and 6.4 deep: from the edge 9 of flat tongue, then a bevel 26 wide "
              "that rises 4.4, then a shoulder of 2 up to the field face side of E"));
  // Over 26 it rises 4.4: (26^2 + 4.4^2) / (2 x 4.4) is the radius.
  const std::string cove = part_of(
      raise_page,
      cupboard(R"("panel": {"thickness": 14, "raised": "back", "raise": {"profile": "cove"}})"));
  INFO(cove);
  CHECK(tells(cove, "then a cove 26 wide of radius ~79.018 that rises 4.4"));
  CHECK(tells(cove, "back of E"));
}

TEST_CASE("A panel's gaps and bites are told across and along its grain") {
  const std::string page = part_of(panel_page, cupboard());
  INFO(page);
  CHECK(tells(page,
              "PANELS in their grooves; in: how deep the edge stands in the groove panels side gap "
              "sides in end gap ends in play "
              "joint E 3 6 1 8 0.4 J5"));
  const std::string bedded =
      part_of(panel_page, house(R"("edge": {"kind": "rebated", "depth": 12})"));
  INFO(bedded);
  CHECK(
      tells(bedded, "PANELS in their rebates; in: how far they lie on the wood at the face side"));
  CHECK(tells(bedded, "E 3 9 1 11 J5"));
}

}  // namespace haunch::test
