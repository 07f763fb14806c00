// Where the rails stand. The leaf is 2054 mm high throughout: an opening of 2060 less 3 at head
// and foot.
#include "vocabulary.h"

namespace haunch::test {
namespace {

/// The heights of the rails' lower edges above the leaf's foot, from the top.
std::vector<Length> rail_feet(const Assembly& leaf) {
  std::vector<Length> feet;
  for (const Piece& piece : leaf.pieces)
    if (piece.role == Role::rail) feet.push_back(piece.place.origin[1]);
  return feet;
}

std::vector<Length> rail_feet(std::string_view rails) {
  return rail_feet(wood(house_mm(R"("clearance": 3, "rail_widths": )" + std::string(rails))));
}

std::string rail_names(std::string_view spec) {
  std::string names;
  for (const Piece& piece : wood(spec).pieces)
    if (piece.role == Role::rail) names += (names.empty() ? "" : ", ") + piece.name;
  return names;
}

}  // namespace

TEST_CASE("The top rail stands at the head and the bottom rail at the foot") {
  CHECK(rail_feet("[118, 230]") == std::vector{mm(2054 - 118), mm(0)});
}

TEST_CASE("Rails that are not placed leave equal openings above and below") {
  // 2054 - 118 - 100 - 100 - 230 = 1506, a third of it 502.
  CHECK(rail_feet("[118, 100, 100, 230]") == std::vector{mm(1936), mm(1334), mm(732), mm(0)});
}

TEST_CASE("The only middle rail of a house door, not placed, has its top at 965") {
  CHECK(rail_feet("[118, 195, 230]") == std::vector{mm(1936), mm(770), mm(0)});
  // No panel has room above it there: so that the openings are equal.
  CHECK(rail_feet("[1100, 195, 230]") == std::vector{mm(954), mm(494.5), mm(0)});
}

TEST_CASE("A middle rail may be placed by its top, its centre or its bottom") {
  const std::vector feet{mm(1936), mm(770), mm(0)};  // 965 - 195 = 770; 770 + 97.5 = 867.5
  CHECK(rail_feet(R"([118, {"width": 195, "top": 965}, 230])") == feet);
  CHECK(rail_feet(R"([118, {"width": 195, "centre": 867.5}, 230])") == feet);
  CHECK(rail_feet(R"([118, {"width": 195, "bottom": 770}, 230])") == feet);
}

TEST_CASE("Rails share the space between their placed neighbours alone") {
  // Lock rail at 770..965. Above: 1936 - 965 = 971, less 121 for one rail: 425 each.
  // Below: 770 - 230 = 540, less 100: 220 each.
  CHECK(rail_feet(R"([118, 121, {"width": 195, "top": 965}, 100, 230])") ==
        std::vector{mm(1936), mm(1390), mm(770), mm(450), mm(0)});
}

TEST_CASE("Odd steps go to the top openings") {
  SECTION("one odd step") {
    // 2054 - 4 x 100 = 1654 mm in three: 1654 x 1 600 000 = 3 x 882 133 333 + 1 steps.
    const Length each = Length::from_steps(882'133'333);
    CHECK(rail_feet("[100, 100, 100, 100]") ==
          std::vector{mm(1954), each * 2 + mm(200), each + mm(100), mm(0)});
    CHECK(mm(1954) - (each * 2 + mm(300)) == each + kStep);
  }
  SECTION("two odd steps, one for each of the two upper openings") {
    // 2054 - 3 x 100 - 99 = 1655 mm: 3 x 882 666 666 + 2 steps.
    const Length each = Length::from_steps(882'666'666);
    CHECK(rail_feet("[100, 100, 100, 99]") ==
          std::vector{mm(1954), each * 2 + kStep + mm(199), each + mm(99), mm(0)});
  }
}

TEST_CASE("Rails and sight heights add up to the leaf, to the step") {
  const Assembly leaf = wood(house_mm(R"("rail_widths": [101, 83, 97, 103, 211])"));
  const std::vector feet = rail_feet(leaf);
  const std::vector widths{mm(101), mm(83), mm(97), mm(103), mm(211)};
  Length sum = widths[0];
  for (std::size_t i = 1; i < feet.size(); ++i) {
    const Length sight = feet[i - 1] - (feet[i] + widths[i]);
    CHECK(sight > Length());
    sum += sight + widths[i];
  }
  CHECK(sum == mm(2054));
}

TEST_CASE("Rails are called by their place, unless the spec names them") {
  CHECK(rail_names(house_mm("\"rail_widths\": [100, 230]")) == "top rail, bottom rail");
  CHECK(rail_names(house_mm("\"rail_widths\": [100, 195, 230]")) ==
        "top rail, lock rail, bottom rail");
  CHECK(rail_names(cabinet_mm("\"rail_widths\": [57, 57, 57]")) ==
        "top rail, middle rail, bottom rail");
  CHECK(rail_names(house_mm("\"rail_widths\": [100, 90, 195, 230]")) ==
        "top rail, middle rail 1, middle rail 2, bottom rail");
  CHECK(rail_names(house_mm(R"("rail_widths": [{"width": 100, "name": "head rail"}, 230])")) ==
        "head rail, bottom rail");
}

TEST_CASE("Rails that cannot stand where they are put are refused") {
  CHECK(refused_at(cabinet_mm("\"rail_widths\": [348, 348]")) == "/rail_widths");
  // The lock rail's top at 1936 touches the top rail's foot.
  CHECK(refused_at(house_mm(R"("rail_widths": [118, {"width": 195, "top": 1936}, 230])")) ==
        "/rail_widths/1");
  CHECK(refused_at(house_mm(R"("rail_widths": [{"width": 118, "top": 2054}, 230])")) ==
        "/rail_widths/0");
  CHECK(refused_at(house_mm(R"("rail_widths": [118, {"width": 230, "bottom": 0}])")) ==
        "/rail_widths/1");
  CHECK(refused_at(house_mm(R"("rail_widths": [9, {"width": 9, "top": 1, "bottom": 2}, 9])")) ==
        "/rail_widths/1/bottom");
  CHECK(refused_at(house_mm("\"rail_widths\": [118]")) == "/rail_widths");
}

}  // namespace haunch::test
