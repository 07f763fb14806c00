// What the sheet tells of what is let in for hinges, locks and others.
#include "pages.h"

namespace haunch::test {
namespace {

constexpr std::string_view kSet =
    R"({"kind": "doorset", "units": "mm", "frame": {"wall_opening": {"width": 1000, "height": 2100}},
        "leaf": {"hinges": {"number": 2, "length": 100, "from_foot": 230, "from_top": 150},
                 "lock": {"height": 1000, "backset": 50,
                          "case": {"height": 120, "depth": 80, "thickness": 15}}}})";

}  // namespace

TEST_CASE("A hinge's recess is told from the foot and from the top of the leaf") {
  // From 2054 - 150 - 100 on.
  const std::string page =
      part_of(fittings_page,
              house(R"("groove_depth": 12, "hinges": {"number": 2, "length": 100, "width": 30,
               "thickness": 3, "from_foot": 230, "from_top": 150})"));
  INFO(page);
  CHECK(tells(page, "A, left stile: outer edge from foot to from top long wide deep from face"));
  CHECK(tells(page, "bottom hinge gain 230 330 1724 100 30 3 0"));
  CHECK(tells(page, "top hinge gain 1804 1904 150 100 30 3 0"));
}

TEST_CASE("A lock's mortise is told about its middle, in the other stile") {
  const std::string page =
      part_of(fittings_page, house(R"("groove_depth": 12, "lock": {"height": 1000, "backset": 60,
                "case": {"height": 120, "depth": 80, "thickness": 15}})"));
  INFO(page);
  CHECK(tells(page, "B, right stile: outer edge"));
  CHECK(tells(page, "lock lock-mortise 940 1060 994 120 15 80 14.5"));
}

TEST_CASE("Of a round hole the middle is told, and what goes through says so") {
  // The letter plate's slot stands in the middle of the rail of 200.
  const std::string page = part_of(fittings_page, house(R"("groove_depth": 12, "fittings": [
      {"name": "letter plate", "on": "bottom rail", "into": "face", "at": 400,
       "cuts": [{"start": 0, "length": 250, "width": 40, "through": true}]},
      {"name": "knob", "on": "right stile", "into": "face", "at": 1000,
       "cuts": [{"start": 0, "diameter": 20, "depth": 30, "from": 50}]}])"));
  INFO(page);
  CHECK(tells(page,
              "B, right stile: face side from foot from top round deep from edge knob bore "
              "1000 1054 20 30 50"));
  CHECK(tells(page,
              "D, bottom rail: face side from left to from right long wide deep from edge "
              "letter plate recess 400 650 274 250 40 through 80"));
}

TEST_CASE("A jamb's recess stands where the leaf's does, 10 higher for the gap below that") {
  const std::string page = part_of(fittings_page, kSet);
  INFO(page);
  CHECK(tells(page, "A, left jamb: inner face"));
  CHECK(tells(page, "bottom hinge gain 240 340"));
  CHECK(tells(page, "of a jamb from its own foot and from the underside of the head."));
}

TEST_CASE("Where nothing is let in there is no page") {
  CHECK(part_of(fittings_page, house()).empty());
}

}  // namespace haunch::test
