// What the sheet tells of frames, and of leaves that hang in them.
#include "pages.h"

namespace haunch::test {

TEST_CASE("A housing is told along its jamb, as wide as the head and its play") {
  // The leaf of 1981, 10 below and 3 above it: the head stands at 1994, and is 25 thick.
  const std::string page =
      part_of(frame_page, frame(R"("clearance": {"left": 3, "foot": 10}, "head_thickness": 25)"));
  INFO(page);
  CHECK(tells(page,
              "HOUSINGS, in the inner faces, across the whole width in from begins ends wide "
              "deep takes A B foot 1993.925 2019.075 25.15 10 C"));
}

TEST_CASE("Planted stops are told by their near edges, behind the leaf and its gap") {
  const std::string page =
      part_of(frame_page, frame(R"("stop": {"gap": 2, "width": 30, "depth": 12})"));
  INFO(page);
  CHECK(
      tells(page, "STOPS, planted on D E F: the edge nearest to the face side stands 46 from it."));
  CHECK_FALSE(tells(page, "REBATES"));
}

TEST_CASE("A rebate for the leaf stops above a threshold") {
  const std::string page =
      part_of(frame_page, R"({"kind": "doorset", "units": "mm", "leaf": {}, "frame": {
                "wall_opening": {"width": 1000, "height": 2100},
                "stop": {"kind": "rebate", "depth": 12}, "threshold": {"height": 20}}})");
  INFO(page);
  CHECK(tells(page, "REBATES for the leaf, from the face side in on the wide deep stops"));
  CHECK(tells(page, "A B inner face 45.5 12 20 above the foot"));
  CHECK_FALSE(tells(page, "STOPS"));
}

TEST_CASE("Depths of housings are from the face as it is before its rebate") {
  const std::string page = part_of(
      frame_page, frame(R"("stop": {"kind": "rebate", "depth": 12}, "head_joint": "housed")"));
  INFO(page);
  CHECK(tells(page, "deep: from the inner face as it is before a rebate is worked there"));
}

TEST_CASE("A lock edge on the bevel is told by what is off at its back") {
  const std::string page =
      part_of(frame_page, R"({"kind": "doorset", "units": "mm", "lock_bevel": 2, "leaf": {},
                "frame": {"wall_opening": {"width": 1000, "height": 2100}}})");
  INFO(page);
  CHECK(tells(page,
              "LOCK EDGES, planed on the bevel H, outer edge: 2 off at its back, nothing at "
              "its face side"));
}

TEST_CASE("Of a leaf alone nothing of a frame is told") {
  CHECK(part_of(frame_page, house()).empty());
}

}  // namespace haunch::test
