// Joints beside the haunched tenon: which are chosen, and the wood of both pieces.
#include "joint_checks.h"
#include "vocabulary.h"

namespace haunch::test {
namespace {

/// A house door of 924 x 2054 mm, stiles of 118, rails of 118, 195 and 230, two panels across.
std::string frame(std::string_view more) {
  return house_mm(R"("stile_width": 118, "rail_widths": [118, {"width": 195, "top": 960}, 230],
                     "panels": 4, "tenon_depth": 76, "groove_depth": 12, )" +
                  std::string(more));
}

std::vector<std::string_view> joint_kinds(const Assembly& wood) {
  std::vector<std::string_view> kinds;
  for (const Joint& joint : wood.joints)
    if (!joint.design.bite &&
        std::find(kinds.begin(), kinds.end(), word_of(joint.kind)) == kinds.end())
      kinds.push_back(word_of(joint.kind));
  return kinds;
}

using Kinds = std::vector<std::string_view>;

}  // namespace

// ---- which joint

TEST_CASE("Where nothing is said, or \"haunched\", every joint is a haunched tenon") {
  CHECK(joint_kinds(wood(frame(R"("name": "plain")"))) == Kinds{"mortise-and-tenon"});
  CHECK(joint_kinds(wood(frame(R"("joint": "haunched")"))) == Kinds{"mortise-and-tenon"});
}

TEST_CASE("Corners, middle rails and muntins may be joined each in their own way") {
  const Assembly leaf = wood(frame(R"("joint": {"middle": "twin"}, "thickness": 65)"));
  CHECK(joint(leaf, "left stile", "top rail").kind == JointKind::mortise_and_tenon);
  CHECK(joint(leaf, "left stile", "lock rail").kind == JointKind::twin_tenon);
  CHECK(joint(leaf, "lock rail", "muntin, tier 1").kind == JointKind::mortise_and_tenon);
}

TEST_CASE("The shop's joint stands where the spec says nothing of that place") {
  const ShopDefaults loose = shop(R"({"units": "mm", "joint": "loose"})");
  const Assembly leaf = wood(frame(R"("joint": {"corner": "haunched"})"), &loose);
  CHECK(joint(leaf, "left stile", "top rail").kind == JointKind::mortise_and_tenon);
  CHECK(joint(leaf, "left stile", "lock rail").kind == JointKind::butt);
  CHECK(assumed_under(work(frame(R"("joint": {"corner": "haunched"})"), &loose), "joint.middle")
            .front()
            .why == "the shop file");
}

TEST_CASE("A joint that is not known gets the nearest one offered") {
  CHECK(refusal(frame(R"("joint": "twins")")) ==
        "/joint: \"twins\" is not known here; did you mean \"twin\"?");
  CHECK(refusal(frame(R"("joint": {"middle": "lose"})")) ==
        "/joint/middle: \"lose\" is not known here; did you mean \"loose\"?");
  CHECK(refusal(frame(R"("joint": {"midle": "loose"})")) ==
        "/joint/midle: unknown key; did you mean \"middle\"?");
}

TEST_CASE("A joint other than a stub is deeper than the groove") {
  CHECK(refusal(house_mm(R"("joint": "twin", "tenon_depth": 12)")) ==
        "/tenon_depth: a depth of 12 mm is that of a stub in the groove, 12 mm deep; \"twin\" "
        "joints go deeper than that");
}

// ---- twin tenons

TEST_CASE("Twin tenons stand side by side, a fifth of the thickness each with a fifth between") {
  // 65 / 5 = 13: mortises from 13 to 26 and from 39 to 52; tenons 0.075 within them.
  const Assembly leaf = wood(frame(R"("joint": "twin", "thickness": 65)"));
  const Joint its = joint(leaf, "left stile", "top rail");
  // 118 less the groove, 12, and the relish, 39; 0.4 of play at each end; from 2054 - 118.
  CHECK(cuts(piece(leaf, "left stile"), "mortise").at(0) == box(1947.6, 40, 13, 2015.4, 118, 26));
  CHECK(cuts(piece(leaf, "left stile"), "mortise").at(1) == box(1947.6, 40, 39, 2015.4, 118, 52));
  CHECK(its.tenon->each.size() == 2);
  CHECK(its.tenon->each[1].from_face == mm(39.075));
  CHECK(its.mortise->each[1].from_face == mm(39));
  // The tip of the top rail: two tenons; and the haunch in the groove, 22 wide, behind them.
  CHECK(wood_differs(piece(leaf, "top rail"), mm(0), mm(76),
                     {box(0, 12, 13.075, 76, 79, 25.925), box(0, 12, 39.075, 76, 79, 51.925),
                      box(64.5, 79, 21.575, 76, 118, 43.425)}) == kNoWood);
  CHECK(measured(leaf, "cheek-fit") == mm(0.15));
  CHECK(measured(leaf, "twin-wall") == mm(13));
  CHECK(measured(leaf, "mortise-between") == mm(13));
  CHECK(measured(leaf, "twin-thickness") == mm(12.85));
  CHECK(not_ok(leaf) == "");
}

TEST_CASE("Twin tenons are sized, spaced and placed as the spec says") {
  const Assembly leaf = wood(frame(
      R"("joint": "twin", "thickness": 65, "twin": {"width": 12, "between": 16, "from_face": 11})"));
  CHECK(cuts(piece(leaf, "left stile"), "mortise").at(1) == box(1947.6, 40, 39, 2015.4, 118, 51));
  CHECK(measured(leaf, "mortise-between") == mm(16));
  CHECK(measured(leaf, "twin-wall") == mm(11));  // 65 - 51 is 14
}

TEST_CASE("A wall under a sixth of the thickness beside twin tenons is doubted") {
  const auto walls = [](std::string_view from_face) {
    return not_ok(wood(frame(R"("joint": "twin", "thickness": 66, "twin": {"width": 13,
                                "between": 13, "from_face": )" +
                             std::string(from_face) + "}")));
  };
  CHECK(walls("11") == "");  // 66 / 6
  CHECK(walls("10.9") == "twin-wall caution");
}

TEST_CASE("Twin tenons thicker than a quarter of the stock each are doubted") {
  const auto thick = [](std::string_view width) {
    return not_ok(wood(frame(R"("joint": "twin", "thickness": 66, "fit_allowance": 0,
                                "twin": {"between": 9, "width": )" +
                             std::string(width) + "}")));
  };
  CHECK(thick("16.5") == "");  // 66 / 4
  CHECK(thick("16.6") == "twin-thickness caution");
}

TEST_CASE("Stock too thin for twin tenons is refused, with the figures") {
  CHECK(refusal(frame(R"("joint": "twin", "thickness": 38, "twin": {"width": 13})")) ==
        "/twin/width: two tenons of 13 mm with 13 mm between them, 0 mm from the face side, do not "
        "lie within the thickness of 38 mm; make them less, or the stock thicker");
}

TEST_CASE("Sizes of joints that the leaf does not have are refused") {
  CHECK(refusal(frame(R"("twin": {"width": 13})")) ==
        "/twin/width: there are no such joints here; say \"joint\": \"twin\", or take it out");
  CHECK(refusal(frame(R"("joint": "twin", "mortise": {"width": 15})")) ==
        "/mortise/width: is of single tenons, and all here are twins; give twin.width, "
        "twin.between or twin.from_face");
}

// ---- loose tenons

TEST_CASE("A loose tenon is a piece of its own, let in to both pieces alike") {
  const Assembly leaf = wood(frame(R"("joint": "loose", "mortise": {"ends": "squared"})"));
  // The rail ends at the stiles: 924 - 2 x 118.
  const Piece rail = piece(leaf, "top rail");
  CHECK(rail.blank == Triple{mm(688), mm(118), mm(44)});
  // 76 into each; 118 less the relish, 39, the groove, 12, and 6 of wood beside it; 15 less 0.15.
  const Piece tenon = piece(leaf, "loose tenon of top rail");
  CHECK(tenon.role == Role::loose_tenon);
  CHECK(tenon.blank == Triple{mm(152), mm(61), mm(14.85)});
  CHECK(tenon.place.origin == Triple{mm(42), mm(1954), mm(14.575)});
  CHECK(cuts(piece(leaf, "left stile"), "mortise").front() ==
        box(1953.6, 40, 14.5, 2015.4, 118, 29.5));
  CHECK(cuts(rail, "mortise").front() == box(0, 17.6, 14.5, 78, 79.4, 29.5));
  CHECK(measured(leaf, "cheek-fit") == mm(0.15));
  CHECK(measured(leaf, "edge-fit") == mm(0.8));
  CHECK(measured(leaf, "bottom-clearance") == mm(2));
  CHECK(measured(leaf, "shoulder-seat") == mm(0));
  CHECK(not_ok(leaf) == "");
}

TEST_CASE("Without haunches the stile's groove stops behind its top and bottom rail") {
  // From 12 within the bottom rail, 230, to 12 within the top one, which begins at 1936.
  const Assembly leaf = wood(frame(R"("joint": "loose")"));
  CHECK(cuts(piece(leaf, "left stile"), "groove").front() == box(218, 106, 14.5, 1948, 118, 29.5));
  const Assembly haunched = wood(frame(R"("joint": {"middle": "loose"})"));
  CHECK(cuts(piece(haunched, "left stile"), "groove").front() ==
        box(0, 106, 14.5, 2054, 118, 29.5));
}

TEST_CASE("A mortise in a rail's end keeps its wall to the groove") {
  const Assembly leaf = wood(frame(R"("joint": "loose", "loose_tenon": {"wall": 5.3})"));
  CHECK(not_ok(leaf) == "mortise-edge caution");  // 5.3 less 0.4 of play: under 5
  CHECK(refusal(frame(R"("joint": "loose", "loose_tenon": {"wall": 0.4})")) ==
        "/loose_tenon/wall: an edge clearance of 0.4 mm must be less than loose_tenon.wall, 0.4 "
        "mm, or the mortise in a rail's end opens into its groove");
}

TEST_CASE(
    "A loose tenon of 3 in, half in each piece, is 1/16 in short of its mortise at each end") {
  // (1 1/2 in into each member of a door is found adequate: shop practice)
  const Assembly leaf = wood(house_in(R"("joint": "loose", "tenon_depth": "1 1/2")"));
  CHECK(piece(leaf, "loose tenon of top rail").blank[0] == inch(3));
  CHECK(joint(leaf, "top rail", "loose tenon of top rail").mortise->depth == inch(1, 9, 16));
}

// ---- mortises with round ends

TEST_CASE("What is free to a square tenon between round ends is told, and measured") {
  // A cutter of 15: ends of radius 7.5. The tenon leaves 0.075 beside each cheek; there the ends
  // stand in by 7.5 - sqrt(7.5^2 - 7.425^2) = 7.5 - 1.058005. Of 67.8: 67.8 - 2 x 6.441995.
  const Assembly leaf = wood(frame(R"("mortise": {"ends": "tenon-shortened"})"));
  const Joint its = joint(leaf, "left stile", "top rail");
  CHECK(its.mortise->end_radius == mm(7.5));
  CHECK(its.mortise->each.front().length == mm(67.8));
  CHECK(decimal(its.mortise->free_width.value(), Unit::mm).substr(0, 7) == "54.9160");
  // The tenon ends where the ends begin to close in: from 12 - 0.4 + 7.5 to 79 + 0.4 - 7.5.
  CHECK(its.tenon->each.front().from_edge == mm(19.1));
  CHECK(its.tenon->width == mm(52.8));
  CHECK(its.tenon->haunches.front().from_edge == mm(71.9));  // comes up to it
  CHECK(measured(leaf, "edge-fit") == *its.mortise->free_width - mm(52.8));
  CHECK(measured(leaf, "cheek-fit") == mm(0.15));
  CHECK(not_ok(leaf) == "");
}

TEST_CASE("Without play a square tenon just meets the round ends where they begin") {
  const Assembly leaf = wood(frame(
      R"("fit_allowance": 0, "mortise": {"ends": "tenon-shortened"}, "tenon": {"edge_clearance": 0})"));
  const Joint its = joint(leaf, "left stile", "top rail");
  CHECK(its.mortise->free_width == mm(67 - 15));
  CHECK(its.tenon->width == mm(52));
  CHECK(measured(leaf, "edge-fit") == mm(0));
}

TEST_CASE("A tenon rounded to its cutter keeps its width and its play at edges and cheeks") {
  const Assembly leaf = wood(frame(R"("mortise": {"ends": "tenon-rounded"})"));
  const Joint its = joint(leaf, "left stile", "top rail");
  CHECK(its.tenon->width == mm(67));
  CHECK(its.tenon->edge_radius == mm(7.425));
  CHECK(its.mortise->each.front().length == mm(67.8));
  CHECK(measured(leaf, "edge-fit") == mm(0.8));
  CHECK(measured(leaf, "cheek-fit") == mm(0.15));
  CHECK(not_ok(leaf) == "");
  // One square again, and its corners stand in the wood.
  Assembly square = leaf;
  square.pieces[piece_number(square, "top rail")].features.back().prisms.clear();
  CHECK(not_ok(square) == "fouling fail\ncheek-fit fail\nedge-fit fail\nbottom-clearance fail");
}

TEST_CASE("A cutter narrower than the mortise leaves rounder corners") {
  // 10 in 15: radius 5 at each of the four corners, and the tenon's edges 5 - 0.075.
  const Assembly leaf = wood(frame(R"("mortise": {"ends": "tenon-rounded", "cutter": 10})"));
  const Joint its = joint(leaf, "left stile", "top rail");
  CHECK(its.mortise->end_radius == mm(5));
  CHECK(its.tenon->edge_radius == mm(4.925));
  CHECK(not_ok(leaf) == "");
}

TEST_CASE("Loose tenons are rounded to the cutter unless the spec says otherwise") {
  // (bull-nosed stock: a radius of half its thickness; shop tip)
  const Assembly leaf = wood(frame(R"("joint": "loose")"));
  CHECK(joint(leaf, "left stile", "loose tenon of top rail").tenon->edge_radius == mm(7.425));
  const Assembly square = wood(frame(R"("joint": "loose", "mortise": {"ends": "squared"})"));
  CHECK(square.pieces.back().features.empty());
  const Assembly narrow =
      wood(frame(R"("joint": "loose", "mortise": {"ends": "tenon-shortened"})"));
  CHECK(piece(narrow, "loose tenon of top rail").blank[1] == mm(61 + 0.8 - 15));
  CHECK(not_ok(narrow) == "");
}

TEST_CASE("A cutter that cannot have made the mortise is refused") {
  CHECK(refusal(frame(R"("mortise": {"ends": "tenon-rounded", "cutter": 16})")) ==
        "/mortise/cutter: a cutter of 16 mm does not go into a mortise of 15 mm; make it at most "
        "that");
  CHECK(refusal(frame(R"("mortise": {"cutter": 10})")) ==
        "/mortise/cutter: no ends of mortises stay round here; say \"mortise\": {\"ends\": "
        "\"tenon-rounded\"} or \"tenon-shortened\", or take it out");
  CHECK(refusal(frame(R"("mortise": {"ends": "round"})")) ==
        "/mortise/ends: \"round\" is not known here; write \"squared\", \"tenon-rounded\" or "
        "\"tenon-shortened\"");
  CHECK(refusal(cabinet_mm(R"("rail_widths": [35, 35], "thickness": 44, "stile_width": 60,
                              "tenon": {"relish": 12}, "mortise": {"ends": "tenon-shortened"})")) ==
        "/mortise/ends: a mortise of 14.8 mm for the top rail leaves nothing straight between ends "
        "of a 15 mm cutter; square the ends, or round the tenon");
}

// ---- through tenons and wedges

TEST_CASE("A through tenon comes out at the stile's other edge, and is wedged there") {
  // (about 3 mm at the thick end, three quarters of the tenon long: a joint manual)
  const Assembly leaf = wood(frame(R"("joint": "through")"));
  CHECK(piece(leaf, "top rail").blank[0] == mm(924));
  const Joint its = joint(leaf, "left stile", "top rail");
  CHECK(its.kind == JointKind::through_tenon);
  CHECK(its.tenon->depth == mm(118));
  // Opened for two wedges from the outer edge, at x = 0: 3 less the play of 0.4, over 3/4 of 118.
  CHECK(its.mortise->flare == Flare{mm(89), mm(2.6)});
  const Feature mortise = piece(leaf, "left stile").features.at(1);
  CHECK(mortise.cuts.front() == box(1947.6, 0, 14.5, 2015.4, 118, 29.5));
  CHECK(mortise.prisms.at(1).outline ==
        std::vector<Corner>{{mm(2015.4), mm(89)}, {mm(2018), mm(0)}, {mm(2015.4), mm(0)}});
  CHECK(measured(leaf, "edge-fit") == mm(0.8));  // where the wedges begin
  CHECK(measured(leaf, "wedge-fit") == mm(0));
  CHECK(not_ok(leaf) == "");
}

TEST_CASE("A wedge is a piece of its own, as wide as the tenon is thick") {
  const Assembly leaf = wood(frame(R"("joint": {"corner": "through"})"));
  const Piece wedge = piece(leaf, "wedge of top rail");
  CHECK(wedge.role == Role::wedge);
  CHECK(wedge.blank == Triple{mm(89), mm(14.85), mm(3)});
  CHECK(wedge.features.front().sizes.front().size == mm(0.4));  // at its thin end: the play
  // Two for each tenon: one tenon on the top rail, two on the bottom one, each at both ends.
  CHECK(count_role(leaf, "wedge") == 12);
  // As much wood is shared or missing if one is a tenth thicker or thinner.
  for (const double more : {0.1, -0.1}) {
    Assembly wrong = leaf;
    wrong.pieces[piece_number(wrong, "wedge of top rail")].place.origin[1] -= mm(more);
    CHECK(not_ok(wrong).find("wedge-fit fail") != std::string::npos);
  }
}

TEST_CASE("Wedges end before the groove, where a panel may stand") {
  // Three quarters of 48 are 36; behind a groove of 13 there are 35.
  const Assembly leaf = wood(cabinet_mm(
      R"("stile_width": 48, "groove_depth": 13, "thickness": 28, "joint": {"middle": "through"},
         "rail_widths": [50, 60, 50], "panel": {"gap": 0})"));
  CHECK(piece(leaf, "wedge of middle rail").blank[0] == mm(35));
  CHECK(not_ok(leaf).find("fouling") == std::string::npos);
}

TEST_CASE("Wedges end before a rebate for glass, where a bead stands") {
  // Three quarters of 70 are 52 or 53; behind a rebate of 18 there are 52, behind one of 22 48.
  const auto wedge = [](std::string_view rebate) {
    return piece(wood(house_mm(R"("stile_width": 70, "joint": "through", "panel": {"kind":
        "sealed-unit", "thickness": 14, "glass": {"rebate": )" +
                               std::string(rebate) + "}}")),
                 "wedge of top rail")
        .blank[0];
  };
  CHECK(wedge("18") == mm(52));
  CHECK(wedge("22") == mm(48));
}

TEST_CASE("Stiles of two widths have tenons of two lengths through them") {
  const Assembly leaf = wood(house_mm(
      R"("stile_width": {"left": 100, "right": 120}, "rail_widths": [100, 200], "joint": "through")"));
  CHECK(joint(leaf, "left stile", "top rail").tenon->depth == mm(100));
  CHECK(joint(leaf, "right stile", "top rail").tenon->depth == mm(120));
  CHECK(not_ok(leaf) == "");
}

TEST_CASE("Without wedges a through mortise is straight") {
  const Assembly leaf = wood(frame(R"("joint": "through", "wedge": {"thickness": 0})"));
  CHECK_FALSE(joint(leaf, "left stile", "top rail").mortise->flare);
  CHECK(count_role(leaf, "wedge") == 0);
  CHECK(not_ok(leaf) == "");
}

TEST_CASE("Wedges that cannot be driven are refused") {
  CHECK(refusal(frame(R"("joint": "through", "wedge": {"thickness": 0.4})")) ==
        "/wedge/thickness: a wedge of 0.4 mm is no thicker than the play at a tenon's edge, 0.4 "
        "mm; make it thicker, or 0 for none");
  CHECK(refusal(frame(R"("joint": "through", "wedge": {"length": 118})")) ==
        "/wedge/length: a wedge of 118 mm is longer than the stile is wide, 118 mm; make it less");
  CHECK(refusal(frame(R"("joint": "through", "wedge": {"thickness": 13},
                         "tenon": {"relish": 13, "gap": 60})")) ==
        "/wedge/thickness: a wedge of 13 mm is as thick as the top rail's relish of 13 mm, and "
        "comes out at the end of the stile; make it less, or tenon.relish more");
  CHECK(refusal(frame(R"("joint": "through", "wedge": {"thickness": 9}, "tenon": {"gap": 18})")) ==
        "/wedge/thickness: two wedges of 9 mm leave nothing of the 18 mm between the lock rail's "
        "tenons; make them less, or tenon.gap more");
}

TEST_CASE("Wedges leave their relish at the end of the stile") {
  const auto relish = [](std::string_view figure) {
    return not_ok(
        wood(frame(R"("joint": "through", "tenon": {"relish": )" + std::string(figure) + "}")));
  };
  // 12 is wanted from the mortise on, the play of 0.4 counted to it; the wedge takes 2.6 besides.
  CHECK(relish("14.6") == "");
  CHECK(relish("14.5") == "mortise-end caution");
}

// ---- bridles

TEST_CASE("Tenons that come out are left on by a little, to be planed off") {
  // (a bridle is cut 1/16 to 1/8 in long: trade practice)
  const auto over = [](const Assembly& leaf) { return piece(leaf, "top rail").horn; };
  for (const std::string_view word : {"through", "bridle"}) {
    const std::string joint = R"("joint": ")" + std::string(word) + "\"";
    CHECK(over(wood(house_mm(R"("rail_widths": [100, 200], )" + joint))) == mm(2));
    CHECK(over(wood(house_in(R"("rail_widths": [4, 9], )" + joint))) == inch(0, 1, 16));
    const Assembly stated =
        wood(house_mm(R"("rail_widths": [100, 200], "tenon_over": 3, )" + joint));
    CHECK(over(stated) == mm(3));
    CHECK(piece(stated, "top rail").blank[0] == mm(924));  // where they stand, flush
  }
  // Of a rail whose tenons end in the stiles there is nothing to plane.
  const Assembly both =
      wood(house_mm(R"("rail_widths": [100, 195, 230], "joint": {"corner": "through"})"));
  CHECK(over(both) == mm(2));
  CHECK(piece(both, "lock rail").horn == Length());
  CHECK(refusal(house_mm(R"("tenon_over": 3)")) ==
        "/tenon_over: no tenons come out here; say \"joint\": \"through\" or \"bridle\", or take "
        "it out");
}

TEST_CASE("A bridle's mortise is open at the end of the stile") {
  // (the mortise as long as the rail is wide, as deep as the stile is wide; a third of the stock)
  const Assembly leaf =
      wood(cabinet_mm(R"("joint": "bridle", "rail_widths": [60, 60], "stile_width": 57)"));
  CHECK(piece(leaf, "top rail").blank[0] == mm(396));
  const Joint its = joint(leaf, "left stile", "top rail");
  CHECK(its.kind == JointKind::bridle);
  // 20 thick: a cutter of 8, 6 from the face. The groove, 9, is lost at the inner edge, less 0.4.
  CHECK(cuts(piece(leaf, "left stile"), "mortise").front() == box(644.6, 0, 6, 696, 57, 14));
  CHECK(its.tenon->width == mm(51));
  CHECK(its.tenon->haunches.empty());
  CHECK(measured(leaf, "one-edge-fit") == mm(0.4));
  CHECK(not_ok(leaf) == "");
}

TEST_CASE("A bridle stands at corners only") {
  const Assembly leaf = wood(frame(R"("joint": "bridle")"));
  CHECK(joint(leaf, "left stile", "top rail").kind == JointKind::bridle);
  CHECK(joint(leaf, "left stile", "lock rail").kind == JointKind::mortise_and_tenon);
  CHECK(refusal(frame(R"("joint": {"middle": "bridle"})")) ==
        "/joint/middle: \"bridle\" is not known here; write \"haunched\", \"twin\", "
        "\"loose\", \"through\", \"dowel\" or \"half-lap\"");
}

}  // namespace haunch::test
