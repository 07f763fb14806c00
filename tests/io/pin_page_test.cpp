// What the sheet tells of pins through tenons.
#include "pages.h"

namespace haunch::test {
namespace {

std::string pinned(std::string_view more) {
  return house(R"("groove_depth": 12, "pin": {"diameter": 8)" + std::string(more) + "}");
}

}  // namespace

TEST_CASE("Pins that draw are bored with the joint apart, nearer to the shoulder in the tenon") {
  // 16 from the face edge, 1.5 less in the tenon.
  const std::string page = part_of(pin_page, pinned(R"(, "offset": 1.5)"));
  INFO(page);
  CHECK(tells(page,
              "in the cheeks of mortises, first: 8 wide, middle 16 from the edge, right "
              "through in edge from middles at A B face foot 90, 165, 1994"));
  CHECK(tells(page, "in tenons: 8 wide, middle 14.5 from the shoulder"));
  CHECK(tells(page, "C lower edge 40"));
  CHECK(tells(page, "The tenons' holes are 1.5 nearer to the shoulder"));
}

TEST_CASE("Pins that only hold are bored through both at once") {
  const std::string page = part_of(pin_page, pinned(R"(, "offset": 0)"));
  INFO(page);
  CHECK(tells(page, "in tenons: 8 wide, middle 16 from the shoulder"));
  CHECK(tells(page, "Bored through both with the joint home."));
}

TEST_CASE("A pin right through is longer by taper and waste at both ends") {
  const std::string page = part_of(pin_page, pinned(""));
  INFO(page);
  CHECK(tells(page,
              "pins F G H I J K: 8 thick, 44 long where they stand, sawn 24 longer for taper "
              "and waste"));
}

TEST_CASE("A blind pin stops in the back cheek, and is longer to be struck") {
  const std::string page = part_of(pin_page, pinned(R"(, "depth": 36)"));
  INFO(page);
  CHECK(tells(page, "36 deep from the face side"));
  CHECK(tells(page, "36 long where they stand, sawn 8 longer to be struck"));
}

TEST_CASE("Where both shoulders are coped, pins are told from the sight line") {
  // Past a moulding of 9: 16 from that, and 1.5 less in the tenon.
  const std::string page = part_of(pin_page, house(R"("groove_depth": 12, "pin": {"diameter": 8},
                                 "edge": {"kind": "coped", "faces": "both"})"));
  INFO(page);
  CHECK(tells(page, "in tenons: 8 wide, middle 23.5 from the sight line"));
  CHECK(part_of(pin_page, house()).empty());
}

}  // namespace haunch::test
