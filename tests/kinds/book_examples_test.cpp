// Case and drawer joints as books that are free to all show them, worked with their figures.
#include <cmath>

#include "vocabulary.h"

namespace haunch::test {
namespace {

std::string drawer(std::string_view more) {
  return R"({"kind": "drawer", "units": "in", "species": "white oak",
             "opening": {"width": 24, "height": 6, "depth": 18}, )" +
         std::string(more) + "}";
}

std::string cabinet(std::string_view more) {
  return R"({"kind": "cabinet", "units": "in", "species": "white oak",
             "size": {"width": 27, "height": "39 1/2", "depth": "19 1/2"}, )" +
         std::string(more) + "}";
}

}  // namespace

TEST_CASE("Mission Furniture (Windsor 1909): fronts fill their openings, bottoms are 1/2 in less") {
  // Sides of 1/2, into each of which the bottom stands 1/4: 24 - 1 + 1/2.
  const Assembly wood = test::wood(drawer(
      R"("runner": {"play": 0, "play_above": 0}, "sides": {"thickness": "1/2"},
         "bottom": {"groove_depth": "1/4", "gap": 0})"));
  CHECK(piece(wood, "front").blank[0] == inch(24));
  CHECK(piece(wood, "bottom").blank[0] == inch(23, 1, 2));
}

TEST_CASE("Fairham (1917): a lap of 1/4 in before dovetails that slope 1 in 8") {
  const Assembly wood = test::wood(
      drawer(R"("front_thickness": "3/4", "corner": {"lap": "1/4", "tails": {"slope": 8}})"));
  const Joint& its = joint(wood, "front", "left side");
  REQUIRE(its.tails);
  CHECK(its.tails->length == inch(0, 1, 2));
  CHECK(its.tails->spread == inch(0, 1, 16));
}

TEST_CASE("Noyes (1910): tails and pins add up to the width, the groove within a tail") {
  // 6 wide less 3 pins of 1/4 and 2 half pins of 1/4: 4 tails of 1 3/16, one each 1 7/16.
  const Assembly wood = test::wood(drawer(
      R"("runner": {"play_above": 0}, "corner": {"tails": {"number": 4, "pin": "1/4", "half_pin": "1/4"}})"));
  const Joint& its = joint(wood, "front", "left side");
  REQUIRE(its.tails);
  REQUIRE(its.tails->each.size() == 4);
  CHECK(its.tails->each[0].width == inch(1, 3, 16));
  CHECK(its.tails->each[3].from_edge == inch(0, 1, 4) + inch(1, 7, 16) * 3);
  CHECK(its.tails->each[3].from_edge + inch(1, 3, 16) + inch(0, 1, 4) == inch(6));
}

TEST_CASE("Noyes (1910), No. 25: a housing takes the whole end, a quarter as deep as its side") {
  // 27 less two sides of 7/8, and 7/32 in each.
  const Assembly wood = test::wood(cabinet(
      R"("case": {"material": "white oak", "thickness": "7/8", "joint_depth": "7/32", "top": "none"},
         "toe": {"height": 4, "by": "notched"})"));
  CHECK(piece(wood, "bottom").blank[0] == inch(27) - inch(0, 7, 8) * 2 + inch(0, 7, 16));
  CHECK(joint(wood, "left side", "bottom").kind == JointKind::housing);
}

TEST_CASE("Noyes (1910), No. 27: a tongue in a housing, as for drawers that are made by machine") {
  const Assembly wood = test::wood(
      drawer(R"("sides": {"thickness": "1/2"}, "corner": {"back": "tongued", "depth": "1/4"})"));
  CHECK(joint(wood, "left side", "back").kind == JointKind::tongue);
  // 23 31/32 over the sides, 22 31/32 between them; and a tongue of 1/4 at each end.
  CHECK(piece(wood, "back").blank[0] == inch(22, 31, 32) + inch(0, 1, 4) * 2);
}

TEST_CASE("Mission Furniture (Windsor 1910): backs of 1/4 in in grooves of 1/4 in") {
  // 25 1/2 between sides of 3/4, and 1/4 less a gap of 1/32 in each.
  const Assembly wood = test::wood(cabinet(
      R"("case": {"material": "white oak", "thickness": "3/4",
                  "back": {"material": "white oak", "thickness": "1/4", "depth": "1/4"}})"));
  CHECK(piece(wood, "back").blank[1] == inch(25, 1, 2) + (inch(0, 1, 4) - inch(0, 1, 32)) * 2);
}

}  // namespace haunch::test
