// Glass in a grooved frame: sizes, rebates, beads, what is refused, and what the wood shows.
#include "door_cautions.h"
#include "findings.h"
#include "remedy.h"
#include "season.h"
#include "vocabulary.h"

namespace haunch::test {
namespace {

/// A house door of one light, 44 mm thick: 688 wide (924 - 2 x 118) and 1706 high (2054 - 118 -
/// 230) between its stiles and rails. Groove 15 x 13, 10 from the face side.
std::string glazed(std::string_view panel, std::string_view more = {}) {
  return house_mm(R"("thickness": 44, "stile_width": 118, "rail_widths": [118, 230],
                     "tenon_depth": 76, "groove_depth": 13, "groove": {"width": 15, "from_face": 10},
                     "panel": {)" +
                  std::string(panel) + "}" + (more.empty() ? "" : ", ") + std::string(more));
}

constexpr std::string_view kPane = R"("kind": "glass", "thickness": 6)";
/// Glass over a lock rail, 964 to 1936 high.
const std::string kAtLockRail =
    R"({"kind": "door", "id": "d", "units": "mm", "opening": {"width": 930, "height": 2060},
        "clearance": 3, "thickness": 44, "stile_width": 118,
        "rail_widths": [118, {"width": 195, "top": 964}, 230], "groove_depth": 13,
        "groove": {"width": 15, "from_face": 10},
        "panel": {"tiers": [{"kind": "glass", "thickness": 6}, {}]})";
constexpr std::string_view kUnit = R"("kind": "sealed-unit", "thickness": 16)";

/// Checked at all, and everywhere well.
bool passes(const Assembly& wood, std::string_view check) {
  const std::vector<Finding> found = findings(wood, check);
  return !found.empty() && std::all_of(found.begin(), found.end(),
                                       [](const Finding& it) { return it.status == Status::ok; });
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
  CHECK(left.features[0].kind == FeatureKind::mitre);
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
  CHECK(passes(leaf, "fouling"));
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
  CHECK(doubted(leaf) == kNothing);
}

TEST_CASE("A sealed unit has a rebate of 18 and 5 of edge clearance, and tenons make way for it") {
  const Assembly leaf = wood(glazed(kUnit));
  CHECK(piece(leaf, "sealed unit").blank == Triple{mm(1732), mm(714), mm(16)});
  CHECK(piece(leaf, "head bead").blank == Triple{mm(724), mm(18), mm(15)});
  // The top rail's tenon begins 18 above the rail's lower edge, not 13.
  CHECK(joint(leaf, "left stile", "top rail").tenon->each.front().from_edge == mm(18));
  CHECK(passes(leaf, "unit-rebate"));
  CHECK(doubted(leaf) == kNothing);
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
      passes(spoiled([](Piece&, Piece& bead) { bead.place.origin[1] += mm(0.5); }), "fouling"));
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

TEST_CASE(
    "A lock that clashes with a light wants a wider stile, a bolt by its corner another place") {
  const auto remedy_of = [](const std::string& spec) {
    const auto its = job(spec);
    const std::vector<Finding> found = check_assembly(work(*its).assembly, its->unit);
    const auto remedies = find_remedies(*its, found).of;
    for (std::size_t i = 0; i < found.size(); ++i)
      if (found[i].rule->check == "fitting-clash" && found[i].status == Status::fail)
        return remedies[i];
    return std::optional<Remedy>();
  };
  // Beside a light no height helps: a case 110 deep wants a stile of 110, the rebate's 13,
  // and 9.5 between them.
  const auto lock = remedy_of(kAtLockRail + R"(, "lock": {"height": 1200, "case": {"height": 150,
                              "thickness": 14, "depth": 110}}})");
  REQUIRE(lock);
  CHECK(lock->key == "stile_width");
  CHECK(lock->to == mm(132.5));
  // The rebate's corner goes 13 below the light, to 951.
  // A recess 60 long from 895 comes to 955; 9.5 below
  // the corner it begins at 881.5.
  const auto bolt = remedy_of(kAtLockRail + R"(, "fittings": [{"name": "bolt", "on": "A",
                              "into": "back", "at": 895, "cuts": [{"start": 0, "length": 60,
                              "width": 20, "from": 90, "depth": 6}]}]})");
  REQUIRE(bolt);
  CHECK(bolt->key == "fittings.0.at");
  CHECK(bolt->to == mm(881.5));
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

TEST_CASE(
    "A muntin's tenon that ends beside a deeper rebate is refused; a stub in the groove is not") {
  // The rebate is 18 deep, the groove 13.
  const auto leaf = [](std::string_view depth) {
    return glazed(kUnit, R"("panels": 2, "muntin_width": 60, "tenon": {"muntin_depth": )" +
                             std::string(depth) + "}");
  };
  CHECK(refused_at(leaf("13.1")) == "/tenon/muntin_depth");
  CHECK(refused_at(leaf("18")) == "/tenon/muntin_depth");
  CHECK(failing(wood(leaf("18.1"))) == kNothing);
  const Assembly stub = wood(leaf("13"));
  CHECK(joint(stub, "top rail", "muntin").kind == JointKind::stub_tenon);
  CHECK(passes(stub, "fouling"));
  CHECK(passes(stub, "face-closed"));
}

TEST_CASE("A rail's tenon that ends beside a deeper rebate is refused") {
  const std::string spec = house_mm(R"("thickness": 44, "stile_width": 118, "tenon_depth": 18,
      "rail_widths": [118, 230], "groove_depth": 13, "groove": {"width": 15, "from_face": 10},
      "panel": {"kind": "sealed-unit", "thickness": 16})");
  CHECK(refused_at(spec) == "/tenon_depth");
}

TEST_CASE("Rails that run on over the stiles have the rebate's corners too") {
  // Lapped rails are 924 long: the rebate begins 13 before the sight at 118 and ends as far past
  // it.
  const Assembly lapped = wood(glazed(kPane, R"("joint": "half-lap")"));
  const std::vector<Box> rail = cuts(piece(lapped, "top rail"), "glass-rebate");
  REQUIRE(rail.size() == 1);
  CHECK(rail[0].low[0] == mm(105));
  CHECK(rail[0].high[0] == mm(819));
  CHECK(failing(lapped) == kNothing);
  const Assembly mitred = wood(
      house_mm(R"("thickness": 44, "stile_width": 118, "rail_widths": [118, 118], "joint": "mitre",
                  "horn": 0, "groove": {"from_face": 10}, "panel": {"kind": "glass", "thickness": 6})"));
  CHECK(failing(mitred) == kNothing);
}

TEST_CASE("Glass goes with dowels, loose and through tenons and bridles") {
  for (const std::string word : {"dowel", "loose", "through", "bridle"}) {
    INFO(word);
    const Assembly leaf = wood(house_mm(
        R"("thickness": 44, "stile_width": 118, "rail_widths": [118, {"width": 195, "top": 960}, 230],
           "horn": 0, "groove": {"from_face": 10}, "panels": {"across": [2, 1]}, "muntin_width": 70,
           "joint": {"corner": ")" +
        word + R"("}, "panel": {"tiers": [{"kind": "sealed-unit",
           "thickness": 14}, {"kind": "glass", "thickness": 6}]})"));
    CHECK(failing(leaf) == kNothing);
  }
}

TEST_CASE("Both leaves of a pair are glazed, each with its own beads") {
  const Assembly pair = wood(glazed(kPane, R"("leaves": 2, "meeting_lap": 13)"));
  std::size_t panes = 0;
  std::size_t beads = 0;
  for (const Piece& it : pair.pieces) {
    panes += it.role == Role::glass ? 1U : 0U;
    beads += it.role == Role::bead ? 1U : 0U;
  }
  CHECK(panes == 2);
  CHECK(beads == 8);
  CHECK(passes(pair, "glass-clearance"));
  CHECK(passes(pair, "fouling"));
}

TEST_CASE("A rebate for glass and that of a lip leave wood between them, or are refused") {
  const auto leaf = [](std::string_view rebate) {
    return glazed(
        R"("kind": "glass", "thickness": 6, "glass": {"rebate": )" + std::string(rebate) + "}",
        R"("meets": "rebate", "lap": 10, "lip_thickness": 15)");
  };
  // The lip takes 10 of the stile's 118.
  CHECK(refused_at(leaf("108")) == "/panel/glass/rebate");
  CHECK(passes(wood(leaf("40")), "fouling"));
}

TEST_CASE("Glass is refused where the back is moulded") {
  CHECK(refused_at(glazed(kPane, R"("edge": {"kind": "coped", "faces": "both"})")) ==
        "/edge/faces");
}

TEST_CASE("Glass lies in the rebate of rebated edges, which has one depth") {
  const auto leaf = [](std::string_view edge, std::string_view glass) {
    return house_mm(R"("edge": {"kind": "rebated")" + std::string(edge) + R"(}, "panel": {)" +
                    std::string(glass) + "}");
  };
  const Assembly door = wood(leaf(R"(, "depth": 14)", kPane));
  CHECK(failing(door) == kNothing);
  CHECK(cuts(piece(door, "left stile"), "rebate").size() == 1);
  CHECK(cuts(piece(door, "left stile"), "glass-rebate").empty());
  // 14 of rebate less 3 of clearance at each side.
  const Box sight = placed_blank(piece(door, "glass, tier 1"));
  CHECK(sight.low[0] == mm(100 - 14 + 3));
  CHECK(failing(wood(leaf({}, kUnit))) == kNothing);
  CHECK(cuts(piece(wood(leaf({}, kUnit)), "left stile"), "rebate").front().extent(1) == mm(18));
  CHECK(refused_at(leaf(R"(, "depth": 14)",
                        R"("kind": "glass", "thickness": 6, "glass": {"rebate": 12})")) ==
        "/panel/glass/rebate");
}

TEST_CASE("Behind a moulding the groove is opened for glass as behind a square edge") {
  for (const char* edge : {"coped", "mitred"})
    for (const char* more : {"", R"(, "panels": 4)", R"(, "leaves": 2)"}) {
      INFO(edge << more);
      const Assembly door =
          work(door_spec(R"("units": "mm", "opening": {"width": 1500, "height": 2060})",
                         R"("edge": ")" + std::string(edge) +
                             R"(", "panel": {"kind": "glass", "thickness": 6})" + more))
              .assembly;
      CHECK(failing(door) == kNothing);
    }
}

TEST_CASE(
    "A light under a top that is arched outside alone has wood over its rebate, or is refused") {
  const auto leaf = [](std::string_view top) {
    return door_spec(R"("units": "mm", "opening": {"width": 900, "height": 2100})",
                     R"("arch": {"rise": 80, "at": "top"}, "groove": {"from_face": 10},
                        "panel": {"kind": "glass", "thickness": 6, "glass": {"rebate": 22}},
                        "rail_widths": [)" +
                         std::string(top) + ", 220]");
  };
  CHECK(failing(wood(leaf("200"))) == kNothing);
  // The rebate's corner is 22 within the stile of 100, so 447 - 78 = 369 from the middle. A rise of
  // 80 over 900 is of a radius of 1305.6, the leaf's is 1302.6: there it is 53.4 below its crown.
  // With 22 of rebate that leaves nothing of a rail of 75, and 0.6 of one of 76, which then has no
  // room for its tenon.
  CHECK(refused_at(leaf("75")) == "/panel/glass/rebate");
  CHECK(refused_at(leaf("76")) == "/rail_widths/0");
}

TEST_CASE("Glass stands still while its frame moves") {
  // 18 of rebate, 5 of them clearance. Oak that gains 4 % swells across by some 1.5 %: the rebate
  // becomes 18.26 deep; the rails' shoulders, along the grain, stay where they are.
  const auto its = job(house_mm(R"("species": "oak, European", "moisture": {"low": 7, "build": 9,
      "high": 13}, "thickness": 44, "stile_width": 118, "rail_widths": [118, 230],
      "groove": {"from_face": 10}, "panel": {"kind": "sealed-unit", "thickness": 14})"));
  const Assembly built = work(*its).assembly;
  const Assembly moved = at_moisture(built, *its->season, 13);
  const Piece& pane = piece(moved, "sealed unit");
  CHECK(pane.blank == piece(built, "sealed unit").blank);
  CHECK(pane.place.origin[0] == piece(built, "sealed unit").place.origin[0]);
  const Piece& stile = piece(moved, "left stile");
  const Box rebate = placed(cuts(stile, "glass-rebate").front(), stile.place);
  const Length room = pane.place.origin[0] - rebate.low[0];
  CHECK(room > mm(5.2));
  CHECK(room < mm(5.35));
  CHECK(rebate.high[0] == pane.place.origin[0] + mm(13));
}

}  // namespace haunch::test
