// The joinery page as a whole: the lines that places are told from, and the order of its parts.
#include "joinery_page.h"

#include "pages.h"

namespace haunch::test {

TEST_CASE("Stiles are marked out as a pair, face edges together") {
  const std::string page = part_of(joinery_page, house());
  INFO(page);
  CHECK(tells(page,
              "MARKING OUT A (left) and B (right) are a pair. Put face side up, foot towards "
              "you, face edges together: the face edge of A is its right one, of B its left "
              "one. Grooves and mortises are all in the face edges."));
  CHECK_FALSE(tells(page, "left end"));
}

TEST_CASE("Rails are told from an end where muntins stand in them") {
  const std::string page = part_of(joinery_page, house(R"("groove_depth": 12, "panels": 2)"));
  INFO(page);
  CHECK(tells(page, "on rails from the left end, that of the tenon there."));
}

TEST_CASE("A lapped rail's end is that of its lap") {
  const std::string page = part_of(joinery_page, cupboard(R"("joint": "half-lap")"));
  INFO(page);
  CHECK(tells(page, "on rails from the left end, that of the lap there."));
}

TEST_CASE("Panels in rebates are marked out as such") {
  const std::string page =
      part_of(joinery_page, house(R"("edge": {"kind": "rebated", "depth": 12})"));
  INFO(page);
  CHECK(tells(page, "Rebates and mortises are all in the face edges."));
}

TEST_CASE("The four stiles of a pair of leaves are told together") {
  const std::string page = part_of(joinery_page, R"({"kind": "door", "units": "mm",
      "opening": {"width": 1500, "height": 2060}, "leaves": 2})");
  INFO(page);
  CHECK(tells(page, "A (left) and B (right); H (left) and I (right) are pairs."));
  CHECK(tells(page, "the face edge of A and H is its right one, of B and I its left one."));
}

TEST_CASE("Jambs are worked in their inner faces, and told from the foot or the tenon there") {
  const std::string plain = part_of(joinery_page, frame(R"("horn": 0)"));
  INFO(plain);
  CHECK(tells(plain, "A (left) and B (right) are the jambs, a pair, worked in their inner faces"));
  CHECK(tells(plain, "Lengths on jambs are from the foot."));
  const std::string sill = part_of(joinery_page, frame(R"("sill": {"height": 70})"));
  INFO(sill);
  CHECK(tells(sill, "from the lower end, that of the tenon in the sill"));
  const std::string horned = part_of(joinery_page, frame(R"("horn": 40, "head_joint": "tenoned")"));
  INFO(horned);
  CHECK(tells(horned,
              "on the head from the left end, level with the outside of the left jamb, "
              "horns not counted"));
}

TEST_CASE("Grooves come before mortises, mortises before tenons, fittings last") {
  const std::string page =
      part_of(joinery_page, house(R"("groove_depth": 12, "hinges": {"number": 2})"));
  const auto at = [&](std::string_view heading) { return page.find(heading); };
  INFO(page);
  CHECK(at("GROOVES") < at("MORTISES"));
  CHECK(at("MORTISES") < at("TENONS"));
  CHECK(at("TENONS") < at("PANELS"));
  CHECK(at("PANELS") < at("FITTINGS"));
  CHECK(tells(page, "FITTINGS"));
}

}  // namespace haunch::test
