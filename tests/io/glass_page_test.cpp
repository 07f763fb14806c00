// What the sheet tells of glass.
#include "pages.h"

namespace haunch::test {
namespace {

const std::string kGlazed =
    house(R"("groove_depth": 12, "panel": {"kind": "glass", "thickness": 4, "glass": {
             "edge_clearance": 3, "bedding": 1.5}})");

}  // namespace

TEST_CASE("A rebate for glass is told from where to where it is stopped") {
  // In a stile 12 past the rails at 200 and 1954; in a rail from shoulder to shoulder, its tenon
  // being 65.
  const std::string page = part_of(glass_page, kGlazed);
  INFO(page);
  CHECK(
      tells(page, "rebate in edge from begins ends deep from face A B face foot 188 1966 12 14.5"));
  CHECK(tells(page, "C lower left end 65 789 12 14.5"));
}

TEST_CASE("A pane is told with what is left round it, and as much in its rebate as that leaves") {
  // 724 + 2 x (12 - 3).
  const std::string page = part_of(glass_page, kGlazed);
  INFO(page);
  CHECK(tells(page, "E glass 742 1772 4 9 3 1.5"));
}

TEST_CASE("Beads are told from long point to long point") {
  const std::string page = part_of(glass_page, kGlazed);
  INFO(page);
  CHECK(tells(page, "beads long point short point wide thick F G 1778 1754 12"));
  CHECK(tells(page, "beads mitred and pinned at most 150 mm apart"));
  CHECK(tells(part_of(glass_page, kGlazed, Unit::inch), "pinned at most 6 in apart"));
}

TEST_CASE("Without glass there is no page of it") {
  CHECK(part_of(glass_page, house()).empty());
}

}  // namespace haunch::test
