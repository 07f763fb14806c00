// Glass in a grooved frame: sizes, rebates, beads, what is refused, and what the wood shows.
#include "checks.h"
#include "door_cautions.h"
#include "vocabulary.h"

namespace haunch::test {
namespace {

/// A house door of one light, 44 mm thick: 688 wide (924 - 2 x 118) and 1706 high (2054 - 118 -
/// 230) between its stiles and rails. Groove 15 x 13, 10 from the face side.
std::string glazed(std::string_view panel, std::string_view more = {}) {
  return house_mm(R"("thickness": 44, "stile_width": 118, "rail_widths": [118, 230],
                     "tenon_depth": 70, "groove_depth": 13, "groove": {"width": 15, "from_face": 10},
                     "panel": {)" +
                  std::string(panel) + "}" + (more.empty() ? "" : ", ") + std::string(more));
}

constexpr std::string_view kPane = R"("kind": "glass", "thickness": 6)";
constexpr std::string_view kUnit = R"("kind": "sealed-unit", "thickness": 16)";

bool passes(const Assembly& wood, std::string_view check) {
  bool found = false;
  for (const Finding& finding : check_assembly(wood, Unit::mm)) {
    if (finding.rule->check != check) continue;
    found = true;
    if (finding.status != Status::ok) return false;
  }
  return found;
}

std::vector<Finding> not_ok(const Assembly& wood) {
  std::vector<Finding> found;
  for (const Finding& finding : check_assembly(wood, Unit::mm))
    if (finding.status != Status::ok) found.push_back(finding);
  return found;
}

}  // namespace

TEST_CASE("Glass is its sight size and twice the rebate, less the edge clearance") {
  // The rebate is as deep as the groove, 13, and 3 are left round the glass: 688 + 2 x 10 = 708 by
  // 1706 + 20 = 1726. It is bedded 1.5 behind the front wall of 10.
  const Piece pane = piece(wood(glazed(kPane)), "glass");
  CHECK(pane.blank == Triple{mm(1726), mm(708), mm(6)});
  CHECK(pane.place.origin == Triple{mm(108), mm(220), mm(11.5)});
  CHECK(pane.matter == Matter::glass);
  CHECK(pane.material == "glass");
  const Clearances design = joint(wood(glazed(kPane)), "left stile", "glass").design;
  CHECK(design.bite == mm(10));
  CHECK(design.bottom == mm(3));
  CHECK(design.bearing == mm(1.5));
}

TEST_CASE("Beads fill the rebate behind the glass, mitred, flush with the back") {
  // 44 - 10 - 1.5 - 6 - 1.5 = 25 thick, 13 wide; 688 + 26 and 1706 + 26 to the long points.
  const Assembly leaf = wood(glazed(kPane));
  const Piece head = piece(leaf, "head bead");
  CHECK(head.blank == Triple{mm(714), mm(13), mm(25)});
  CHECK(head.place.origin == Triple{mm(105), mm(1936), mm(19)});
  const Piece left = piece(leaf, "left bead");
  CHECK(left.blank == Triple{mm(1732), mm(13), mm(25)});
  REQUIRE(left.features.size() == 1);
  CHECK(left.features[0].kind == "mitre");
  CHECK(left.features[0].prisms.size() == 2);
}

TEST_CASE("The groove is opened to the back beside the light alone, the corners in the stiles") {
  const Assembly leaf = wood(house_mm(R"("thickness": 44, "stile_width": 118,
                       "rail_widths": [118, {"width": 195, "top": 964}, 230],
                       "groove_depth": 13, "groove": {"width": 15, "from_face": 10},
                       "panel": {"tiers": [{"kind": "glass", "thickness": 6}, {}]})"));
  // The upper light is 964 to 1936 high.
  const std::vector<Box> stile = cuts(piece(leaf, "left stile"), "glass-rebate");
  REQUIRE(stile.size() == 1);
  CHECK(stile[0].low == Triple{mm(951), mm(105), mm(10)});
  CHECK(stile[0].high == Triple{mm(1949), mm(118), mm(44)});
  CHECK(cuts(piece(leaf, "bottom rail"), "glass-rebate").empty());
  const Piece lock = piece(leaf, "lock rail");
  const std::vector<Box> rail = cuts(lock, "glass-rebate");
  REQUIRE(rail.size() == 1);
  const Length shoulder = mm(118) - lock.place.origin[0];
  CHECK(rail[0].low == Triple{shoulder, mm(182), mm(10)});
  CHECK(rail[0].high == Triple{shoulder + mm(688), mm(195), mm(44)});
  CHECK(passes(leaf, "shared-wood"));
  CHECK(passes(leaf, "face-closed"));
}

TEST_CASE("Two lights side by side have a muntin rebated at both edges") {
  const Assembly leaf = wood(glazed(kPane, R"("panels": 2, "muntin_width": 48)"));
  // (688 - 48) / 2 = 320.
  CHECK(piece(leaf, "glass 1").blank[1] == mm(340));
  CHECK(piece(leaf, "glass 2").place.origin[0] == mm(118 + 320 + 48 - 10));
  CHECK(cuts(piece(leaf, "muntin"), "glass-rebate").size() == 2);
  const std::vector<Box> rail = cuts(piece(leaf, "top rail"), "glass-rebate");
  REQUIRE(rail.size() == 2);
  CHECK(rail[0].extent(0) == mm(333));  // 13 under the muntin's foot
  CHECK(not_ok(leaf).empty());
}

TEST_CASE("A sealed unit has a rebate of 18 and 5 of edge clearance, and tenons make way for it") {
  const Assembly leaf = wood(glazed(kUnit));
  CHECK(piece(leaf, "sealed unit").blank == Triple{mm(1732), mm(714), mm(16)});
  CHECK(piece(leaf, "head bead").blank == Triple{mm(724), mm(18), mm(15)});
  // The top rail's tenon begins 18 above the rail's lower edge, not 13.
  CHECK(joint(leaf, "left stile", "top rail").tenon->each.front().from_edge == mm(18));
  CHECK(passes(leaf, "unit-rebate"));
  CHECK(not_ok(leaf).empty());
}

TEST_CASE("A shallow rebate for a sealed unit is doubted, as NHBC asks for 15 mm") {
  const Assembly shallow =
      wood(glazed(R"("kind": "sealed-unit", "thickness": 16, "glass": {"rebate": 14.9})"));
  CHECK_FALSE(passes(shallow, "unit-rebate"));
  CHECK(passes(wood(glazed(R"("kind": "sealed-unit", "thickness": 16, "glass": {"rebate": 15})")),
               "unit-rebate"));
}

TEST_CASE("Cover, edge clearance, bedding and beads are measured in the wood") {
  for (const char* check :
       {"glass-bite", "glass-clearance", "glass-bedding", "bead-home", "bead-thickness"})
    CHECK(passes(wood(glazed(kPane)), check));
  const auto spoiled = [](auto&& change) {
    Assembly leaf = wood(glazed(kPane));
    change(leaf.pieces[piece_number(leaf, "glass")], leaf.pieces[piece_number(leaf, "left bead")]);
    return leaf;
  };
  CHECK_FALSE(passes(spoiled([](Piece& pane, Piece&) { pane.place.origin[0] += mm(1); }),
                     "glass-clearance"));
  CHECK_FALSE(passes(spoiled([](Piece& pane, Piece&) { pane.place.origin[2] += mm(0.5); }),
                     "glass-bedding"));
  CHECK_FALSE(
      passes(spoiled([](Piece&, Piece& bead) { bead.place.origin[0] += mm(0.5); }), "bead-home"));
  CHECK_FALSE(
      passes(spoiled([](Piece&, Piece& bead) { bead.place.origin[1] += mm(0.5); }), "shared-wood"));
}

TEST_CASE("Glass that stands less than 3 mm behind the sight edge is not held") {
  const auto with = [](double clearance) {
    return wood(glazed(R"("kind": "glass", "thickness": 6, "glass": {"edge_clearance": )" +
                       std::to_string(clearance) + "}"));
  };
  CHECK(passes(with(10), "glass-bite"));
  CHECK_FALSE(passes(with(10.5), "glass-bite"));
}

TEST_CASE("A bead under 6 mm splits at its pins") {
  // 44 - 10 - 3 - 25 = 6; with 25.5 it is 5.5.
  CHECK(passes(wood(glazed(R"("kind": "sealed-unit", "thickness": 25)")), "bead-thickness"));
  CHECK_FALSE(
      passes(wood(glazed(R"("kind": "sealed-unit", "thickness": 25.5)")), "bead-thickness"));
}

TEST_CASE("A lock let in as far as the glass clashes with it, and one near it is doubted") {
  const auto leaf = [](std::string_view depth) {
    return wood(glazed(kPane, R"("lock": {"height": 1000, "case": {"height": 150, "thickness": 14,
                                 "depth": )" +
                                  std::string(depth) + "}}"));
  };
  // The stile is 118 wide, the rebate takes 13 of it: from 105 on.
  CHECK_FALSE(passes(leaf("110"), "fitting-clash"));
  CHECK_FALSE(passes(leaf("96"), "glass-machining"));
  CHECK(passes(leaf("95.5"), "glass-machining"));
}

TEST_CASE("Whoever glazes a door is told once of safety glazing") {
  const auto about = [](const Worked& worked) {
    std::size_t count = 0;
    for (const Caution& caution : worked.cautions)
      count += caution.about == "safety glazing" ? 1U : 0U;
    return count;
  };
  CHECK(about(work(glazed(kPane))) == 1);
  CHECK(about(work(glazed(""))) == 0);
}

TEST_CASE("What can't be of glass is refused at its key") {
  CHECK(refused_at(glazed(R"("kind": "glass")")) == "/panel/thickness");
  CHECK(refused_at(glazed(R"("kind": "glass", "thickness": 6, "raised": "front")")) ==
        "/panel/raised");
  CHECK(refused_at(glazed(R"("glass": {"bedding": 2})")) == "/panel/glass/bedding");
  CHECK(refused_at(glazed(R"("kind": "glass", "thickness": 31)")) == "/panel/thickness");
  CHECK(refused_at(glazed(R"("kind": "glass", "thickness": 6, "glass": {"rebate": 12})")) ==
        "/panel/glass/rebate");
  CHECK(refused_at(glazed(R"("kind": "glass", "thickness": 6, "glass": {"edge_clearance": 13})")) ==
        "/panel/glass/edge_clearance");
  CHECK(refused_at(glazed(R"("kind": "glass", "thickness": 6, "glass": {"rebate": 118})")) ==
        "/panel/glass/rebate");
}

}  // namespace haunch::test
