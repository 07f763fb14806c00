// Panels of board: the groove takes the measured thickness, gaps are small, nothing moves.
#include "season.h"
#include "vocabulary.h"

namespace haunch::test {
namespace {

/// A cabinet door, 20 mm thick: 280 x 582 between its stiles and rails of 57 (394 and 696 less
/// twice 57), groove 9 deep.
std::string board_door(std::string_view panel, std::string_view more = {}) {
  return door_spec(
      R"("units": "mm", "opening": {"width": 398, "height": 700})",
      R"("panel": {)" + std::string(panel) + "}" + (more.empty() ? "" : ", ") + std::string(more));
}

constexpr std::string_view kPlywood =
    R"("kind": "board", "thickness": 6.3, "material": "birch plywood")";

}  // namespace

TEST_CASE("The groove is as wide as the measured board and its allowance, the mortise as ever") {
  const Worked worked = work(board_door(kPlywood));
  const Box groove = cuts(piece(worked.assembly, "left stile"), "groove").front();
  CHECK(groove.extent(2) == mm(6.7));
  CHECK(groove.low[2] == mm(6.65));  // (20 - 6.7) / 2
  CHECK(joint(worked.assembly, "left stile", "top rail").mortise->width == mm(8));
  CHECK(reasons(worked, "groove.width") ==
        std::vector<std::string>{"the board's 6.3 mm and its allowance"});
}

TEST_CASE("A board stands 0.5 mm off the groove's bottom all round") {
  // 280 + 2 x 8.5 = 297; 582 + 17 = 599.
  const Piece its = piece(wood(board_door(kPlywood)), "panel");
  CHECK(its.blank == Triple{mm(599), mm(297), mm(6.3)});
  CHECK(its.matter == Matter::board);
  CHECK(its.material == "birch plywood");
  CHECK(its.features.empty());
}

TEST_CASE("A board too thick for the frame's groove is rebated to a tongue") {
  // 12 and 0.4 are more than 0.4 x 20: the groove stays as wide as the mortise, 8.
  const Piece its = piece(wood(board_door(R"("kind": "board", "thickness": 12)")), "panel");
  REQUIRE(its.features.size() == 1);
  CHECK(its.features[0].kind == FeatureKind::rebate);
  CHECK(its.features[0].cuts.front().extent(2) == mm(12 - 7.6));
}

TEST_CASE("Of two boards the thinner sets the groove, the thicker is rebated") {
  const Assembly leaf = wood(board_door(
      R"("tiers": [{"kind": "board", "thickness": 6.5}, {"kind": "board", "thickness": 5.2}])",
      R"("rail_widths": [57, 57, 57])"));
  CHECK(cuts(piece(leaf, "left stile"), "groove").front().extent(2) == mm(5.6));
  CHECK(piece(leaf, "panel, tier 1").features.size() == 1);
  CHECK(piece(leaf, "panel, tier 2").features.empty());
}

TEST_CASE("A groove that is given stands, whatever the board") {
  const Assembly leaf = wood(board_door(kPlywood, R"("groove": {"width": 6.5})"));
  CHECK(joint(leaf, "left stile", "panel").design.cheeks == mm(0.2));
}

TEST_CASE("Board is as large in a damp summer as at the bench, solid wood is not") {
  const auto widths = [](std::string_view panel) {
    const auto its = job(board_door(
        panel, R"("species": "beech, European", "moisture": {"low": 7, "build": 9, "high": 12})"));
    const Assembly built = work(*its).assembly;
    return std::pair(piece(built, "panel").blank[1],
                     piece(at_moisture(built, *its->season, 12), "panel").blank[1]);
  };
  CHECK(widths(kPlywood).first == widths(kPlywood).second);
  CHECK(widths("").first < widths("").second);
}

TEST_CASE("A tier of another kind takes nothing from what is said of all panels") {
  const Assembly leaf = wood(board_door(R"("thickness": 12, "raised": "front", "gap": 2,
                    "tiers": [{}, {"kind": "board", "thickness": 6.5}])",
                                        R"("rail_widths": [57, 57, 57])"));
  CHECK(piece(leaf, "panel, tier 1").features.front().kind == FeatureKind::raise);
  const Piece board = piece(leaf, "panel, tier 2");
  CHECK(board.blank[2] == mm(6.5));
  CHECK(board.blank[1] == mm(297));
  CHECK(board.features.empty());
}

TEST_CASE("A shop's gap for solid panels is not one for board") {
  const ShopDefaults shops = shop(R"({"units": "mm", "panel": {"gap": 4, "raised": "front"}})");
  CHECK(piece(wood(board_door(kPlywood), &shops), "panel").blank[1] == mm(297));
}

TEST_CASE("A board is measured, and no remedy changes it") {
  CHECK(refused_at(board_door(R"("kind": "board")")) == "/panel/thickness");
  for (const Lever& lever : job(board_door(kPlywood))->levers())
    CHECK(lever.key != "panel.thickness");
}

TEST_CASE("What can't be of a board is refused at its key") {
  CHECK(refused_at(board_door(R"("kind": "board", "thickness": 9, "flush": "front")")) ==
        "/panel/flush");
  CHECK(refused_at(board_door(R"("material": "birch plywood")")) == "/panel/material");
  CHECK(refused_at(board_door(R"("kind": "plywood")")) == "/panel/kind");
}

}  // namespace haunch::test
