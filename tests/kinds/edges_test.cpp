// How the edges of the frame are worked: what is cut, where each shoulder stands, what is refused.
#include "edge.h"
#include "findings.h"
#include "shoulders.h"
#include "vocabulary.h"

namespace haunch::test {
namespace {

/// A house door 924 x 2054, 44 thick, of one panel; stiles 100, tenons 65 deep and 15 from 14.5.
std::string rebated(std::string_view edge, std::string_view more = {}) {
  return house_mm(R"("thickness": 44, "stile_width": 100, "rail_widths": [100, 200],
                     "tenon_depth": 65, "mortise": {"width": 15}, "edge": )" +
                  std::string(edge) + (more.empty() ? "" : ", ") + std::string(more));
}

/// The same with a mortise that is told in full.
std::string placed(std::string_view edge, std::string_view mortise) {
  return house_mm(R"("thickness": 44, "stile_width": 100, "rail_widths": [100, 200],
                     "tenon_depth": 65, "edge": )" +
                  std::string(edge) + ", " + std::string(mortise));
}

constexpr std::string_view kTwelve = R"({"kind": "rebated", "depth": 12, "width": 28})";

/// A cabinet door 396 wide and 20 thick, its groove and mortise 8 from 6; stiles 57, tenons 38.
std::string bevelled(std::string_view of_edge = {}, std::string_view more = {}) {
  return cabinet_mm(R"("edge": {"kind": "coped", "profile": "bevel", "width": 6, "depth": 4)" +
                    std::string(of_edge.empty() ? "" : ", ") + std::string(of_edge) + "}" +
                    (more.empty() ? "" : ", ") + std::string(more));
}

/// The same mitred, with tenons of 30.
std::string mitred(std::string_view more = {}) {
  return cabinet_mm(R"("edge": {"kind": "mitred", "profile": "bevel", "width": 6, "depth": 4},
                       "tenon_depth": 30)" +
                    std::string(more.empty() ? "" : ", ") + std::string(more));
}

/// A house door with a quarter round of 6 under a fillet of 1.
std::string rounded(std::string_view profile) {
  return house_mm(R"("edge": {"kind": "coped", "width": 6, "fillet": 1, "profile": ")" +
                  std::string(profile) + "\"}");
}

Feature feature(const Piece& piece, std::string_view kind) {
  for (const Feature& it : piece.features)
    if (word_of(it.kind) == kind) return it;
  throw std::invalid_argument("no " + std::string(kind));
}

Prism prism(const Piece& piece, std::string_view kind) {
  return feature(piece, kind).prisms.at(0);
}

std::vector<Corner> outline(const Piece& piece, std::string_view kind) {
  return prism(piece, kind).outline;
}

Corner corner(double u, double v) {
  return {mm(u), mm(v)};
}

/// How deep in millimetres a stile's wood lies below its face, so far from its sight edge.
double deep_at(const Piece& stile, double from_edge) {
  const Length middle = floor_half(stile.blank[0]);
  const Length at = stile.blank[1] - mm(from_edge);
  const Box column{{middle, at, Length()}, {middle + mm(1), at + kStep, stile.blank[2]}};
  return static_cast<double>(room_of(clipped(solid_of(stile).wood, column)).low[2].steps()) / 1.6e6;
}

}  // namespace

TEST_CASE("A rebate is cut in the back of every sight edge, its depth across the piece") {
  // 28 of 44 from the back: 16 are left at the face side.
  const Assembly leaf = wood(rebated(kTwelve));
  CHECK(cuts(piece(leaf, "left stile"), "rebate") == std::vector{box(0, 88, 16, 2054, 100, 44)});
  CHECK(cuts(piece(leaf, "right stile"), "rebate") == std::vector{box(0, 0, 16, 2054, 12, 44)});
  CHECK(cuts(piece(leaf, "top rail"), "rebate") == std::vector{box(0, 0, 16, 854, 12, 44)});
  CHECK(cuts(piece(leaf, "bottom rail"), "rebate") == std::vector{box(0, 188, 16, 854, 200, 44)});
  CHECK(cuts(piece(leaf, "left stile"), "groove").empty());
}

TEST_CASE(
    "Between the shoulders at the face side a rail is as ever, at the back longer by both "
    "rebates") {
  // 924 - 2 x 100 = 724 at the face side, 724 + 2 x 12 = 748 at the back; the piece 724 + 2 x 65.
  const Assembly leaf = wood(rebated(kTwelve));
  const Piece rail = piece(leaf, "top rail");
  CHECK(rail.blank[0] == mm(854));
  CHECK(rail.place.origin[0] == mm(35));
  const std::vector<Box> tenon = cuts(rail, "tenon");
  // The cheeks: 14.575 in front of the tenon and 14.575 behind it, over the whole width.
  CHECK(tenon[0] == box(0, 0, 0, 65, 100, 14.575));
  CHECK(tenon[1] == box(0, 0, 29.425, 53, 100, 44));
  const Joint its = joint(leaf, "left stile", "top rail");
  CHECK(its.tenon->depth == mm(65));
  CHECK(its.tenon->longer_at_back == mm(12));
  CHECK(its.tenon->longer_at_face == Length());
}

TEST_CASE("Bookcase door: with a rebate of 3/8 the shoulders differ by 3/8 at each end") {
  // Radford's Cyclopedia, bookcase door: rebate 3/8, so that the shoulders differ by 3/8 each end.
  // A leaf of 16 - 2 x 1/16 = 15 7/8; less two stiles of 2: 11 7/8 and 12 5/8; tenons of 1 1/4.
  const Assembly leaf = wood(cabinet_in(R"("stile_width": 2, "tenon_depth": "1 1/4",
                                           "edge": {"kind": "rebated", "depth": "3/8"})"));
  const Joint its = joint(leaf, "left stile", "top rail");
  CHECK(its.tenon->longer_at_back == inch(0, 3, 8));
  CHECK(piece(leaf, "top rail").blank[0] == inch(14, 3, 8));
}

TEST_CASE("A joint tells from shoulder to shoulder at the face and at the back") {
  const Assembly leaf = wood(rebated(kTwelve));
  const Joint its = joint(leaf, "right stile", "top rail");
  const auto shoulders = shoulders_at(its, leaf.pieces[its.enters], shoulders_of(leaf)[its.enters]);
  REQUIRE(shoulders);
  CHECK_FALSE(shoulders->at_low);
  CHECK(shoulders->face == mm(724));
  CHECK(shoulders->back == mm(748));
  CHECK_FALSE(shoulders->straight);
  const Joint panel = joint(leaf, "right stile", "panel");
  CHECK_FALSE(shoulders_at(panel, leaf.pieces[panel.enters], shoulders_of(leaf)[panel.enters]));
}

TEST_CASE("A haunch has a seat of its own and fills the rebate at the stile's end") {
  // 10 past the rebate of 12, the seat 2 deeper, as the mortise is; relish 33 of 100.
  const Assembly leaf = wood(rebated(kTwelve));
  const Joint its = joint(leaf, "left stile", "top rail");
  CHECK(its.tenon->haunch_depth == mm(22));
  CHECK(cuts(piece(leaf, "left stile"), "haunching").front() ==
        box(2021, 76, 14.5, 2054, 100, 29.5));
}

TEST_CASE("A tenon loses the rebate's depth at the inner edge, as it does a groove's") {
  const Assembly leaf = wood(rebated(kTwelve));
  const TenonSpan top = joint(leaf, "left stile", "top rail").tenon->each.front();
  CHECK(top.from_edge == mm(12));
  CHECK(top.width == mm(55));
}

TEST_CASE("The panel lies against the wood at the face side, with its gaps to the rebate's walls") {
  // Sights 724 x 1754; 12 - 3 at the sides, 12 - 1 at the ends. Half of 28 thick.
  const Assembly leaf = wood(rebated(kTwelve));
  const Piece panel = piece(leaf, "panel");
  CHECK(panel.blank == Triple{mm(1776), mm(742), mm(14)});
  CHECK(panel.place.origin == Triple{mm(91), mm(189), mm(16)});
  const Joint side = joint(leaf, "left stile", "panel");
  CHECK(side.kind == JointKind::panel_in_rebate);
  CHECK(side.design.bite == mm(9));
  CHECK(side.design.bottom == mm(3));
  CHECK(side.design.bearing == Length());
  CHECK_FALSE(side.design.cheeks);
}

TEST_CASE("What says nothing of the rebate's width comes as far as the mortise's near wall") {
  const Worked worked = work(rebated(R"("rebated")"));
  CHECK(assumed(worked, "edge.width") == std::vector{mm(29.5)});
  CHECK(assumed(worked, "edge.depth") == std::vector{mm(12)});
  CHECK(assumed_under(worked, "groove_depth").empty());
  CHECK(assumed_under(worked, "panel.allowance").empty());
}

TEST_CASE("A mortise in a rebated rail is told from the face shoulder") {
  // One muntin of 90 in the middle of 724: 317 from the shoulder, its tenon 12 in, 0.4 of play.
  const Assembly leaf = wood(rebated(kTwelve, R"("panels": 2)"));
  const Joint its = joint(leaf, "top rail", "muntin");
  CHECK(its.mortise->from_shoulder == mm(317 + 12 - 0.4));
  CHECK(its.mortise->shoulder == "face");
}

TEST_CASE("A rebate that does not end at the tenon is refused, with the widths that do") {
  // From the mortise's near wall, 14.5, to its far one, 29.5.
  constexpr std::string_view kPlace = R"("mortise": {"width": 15, "from_face": 14.5})";
  CHECK(refusal(placed(R"({"kind": "rebated", "width": 12})", kPlace)) ==
        "/edge/width: a rebate of 12 mm from the back does not end at the tenon, so that no one "
        "plane is a shoulder; make edge.width from 14.5 mm to 29.5 mm");
  CHECK(refused_at(placed(R"({"kind": "rebated", "width": 30})", kPlace)) == "/edge/width");
  CHECK(refusal(placed(R"({"kind": "rebated", "width": 14.5})", kPlace)).empty());
}

TEST_CASE("A tenon that stands before the rebate loses no more to it than its play") {
  // The rebate begins 44 - 12 = 32 from the face: the mortise ends there, at 17. The top rail's
  // relish is a third of 100, 33: a tenon from 0.4 to 67, its mortise up to the rail's edge.
  const Worked worked = work(rebated(R"({"kind": "rebated", "depth": 9, "width": 12})"));
  CHECK(assumed(worked, "mortise.from_face") == std::vector{mm(17)});
  const Assembly& leaf = worked.assembly;
  const Joint its = joint(leaf, "left stile", "top rail");
  CHECK(its.tenon->each.front().width == mm(66.6));
  CHECK(its.mortise->each.front().length == mm(67.4));
  CHECK(its.mortise->each.front().from_foot == mm(1954));  // of 2054, less the rail
  // With no play nothing is lost at all.
  const Assembly tight = wood(rebated(R"({"kind": "rebated", "depth": 9, "width": 12})",
                                      R"("tenon": {"edge_clearance": 0})"));
  CHECK(joint(tight, "left stile", "top rail").tenon->each.front().width == mm(67));
  CHECK(joint(tight, "left stile", "top rail").mortise->each.front().length == mm(67));
}

TEST_CASE("A rebate that ends within the tenon takes its depth off it, as one at the near wall") {
  // 44 - 20 = 24 lies between the walls, 14.5 and 29.5: 100 less 9 and 33.
  const Assembly leaf = wood(rebated(R"({"kind": "rebated", "depth": 9, "width": 20})"));
  CHECK(joint(leaf, "left stile", "top rail").tenon->each.front().width == mm(58));
}

TEST_CASE("A raised panel lies in a rebate with its tongue, its field stands into the sight") {
  const auto leaf = [](std::string_view face) {
    return house_mm(R"("edge": "rebated", "panel": {"raised": ")" + std::string(face) + R"("})");
  };
  // The rebate is 29.5 of 44 wide, its half 14, and 14.5 stand before it.
  const Assembly front = wood(leaf("front"));
  const Piece& panel = piece(front, "panel, tier 1");
  CHECK(panel.blank[2] == mm(28));
  CHECK(panel.place.origin[2] == mm(0.5));
  CHECK(failing(front) == kNothing);
  CHECK(failing(wood(leaf("back"))) == kNothing);
  CHECK(failing(wood(leaf("both"))) == kNothing);
  CHECK(refused_at(house_mm(R"("edge": "rebated", "panel": {"raise": {"width": 40}})")) ==
        "/panel/raise/width");
  CHECK(refused_at(house_mm(R"("edge": "rebated", "panel": {"flush": "front"})")) ==
        "/panel/flush");
}

TEST_CASE("Keys of a groove have no place in a rebated frame") {
  CHECK(refusal(rebated(kTwelve, R"("groove_depth": 12)")) ==
        "/groove_depth: a rebated frame has no groove; write the rebate's as edge.depth");
  CHECK(refusal(rebated(kTwelve, R"("groove": {"width": 12})")) ==
        "/groove/width: a rebated frame has no groove; write the rebate's as edge.width");
  CHECK(refusal(rebated(kTwelve, R"("panel": {"flush": "front"})")) ==
        "/panel/flush: a panel that lies in a rebate is flat or raised; take this out");
  CHECK(refused_at(rebated(kTwelve, R"("panel": {"tiers": [{"flush": "front"}]})")) ==
        "/panel/tiers/0/flush");
  CHECK(refusal(rebated(R"({"kind": "square", "width": 12})")) ==
        "/edge/width: a square edge has no such thing; take it out, or write another kind");
}

TEST_CASE("The groove of a shop file gives way to a spec's rebate, and the other way round") {
  const ShopDefaults grooved =
      shop(R"({"units": "mm", "groove_depth": 11, "panel": {"allowance": 0.3}})");
  const Assembly leaf = wood(rebated(kTwelve), &grooved);
  CHECK(cuts(piece(leaf, "left stile"), "rebate").size() == 1);
  const ShopDefaults rebates = shop(R"({"units": "mm", "edge": {"kind": "rebated", "depth": 10}})");
  CHECK(cuts(piece(wood(house_mm(), &rebates), "left stile"), "rebate").size() == 1);
  CHECK(
      cuts(piece(wood(house_mm(R"("edge": "square")"), &rebates), "left stile"), "groove").size() ==
      1);
}

TEST_CASE("What a shop says of a moulding is not taken for a rebate") {
  const ShopDefaults mouldings = shop(
      R"({"units": "mm", "edge": {"kind": "coped", "profile": "bevel", "width": 5, "depth": 4}})");
  CHECK(cuts(piece(wood(rebated(R"("rebated")"), &mouldings), "left stile"), "rebate") ==
        std::vector{box(0, 88, 14.5, 2054, 100, 44)});
}

TEST_CASE("Tenon and haunch must go past the rebate") {
  CHECK(refusal(house_mm(R"("tenon_depth": 12, "edge": "rebated")")) ==
        "/tenon_depth: a tenon of 12 mm does not go past the rebate, 12 mm deep; make tenon_depth "
        "more");
  CHECK(refusal(rebated(kTwelve, R"("tenon": {"haunch_depth": 11})")) ==
        "/tenon/haunch_depth: a haunch of 11 mm does not fill the rebate, 12 mm deep; make it at "
        "least that");
  CHECK(refusal(rebated(kTwelve, R"("tenon": {"haunch_depth": 63})")) ==
        "/tenon/haunch_depth: a haunch of 63 mm with 2 mm of room below it comes to the end of a "
        "tenon of 65 mm; make it less, or the tenon deeper");
}

TEST_CASE("A bevel is stuck on every sight edge at the face side, over the whole length") {
  // 6 across the stile and 4 into its thickness.
  const Assembly leaf = wood(bevelled());
  CHECK(outline(piece(leaf, "left stile"), "moulding") ==
        std::vector{corner(51, 0), corner(57, 4), corner(57, 0)});
  CHECK(outline(piece(leaf, "right stile"), "moulding") ==
        std::vector{corner(6, 0), corner(0, 4), corner(0, 0)});
  const Prism rails = prism(piece(leaf, "top rail"), "moulding");
  CHECK(rails.outline == std::vector{corner(6, 0), corner(0, 4), corner(0, 0)});
  CHECK(rails.along == 0);
  CHECK(rails.from == Length());
  CHECK(rails.to == mm(358));
}

TEST_CASE("A rail's end is the counterpart of the moulding, cut from the same outline") {
  // A leaf of 396, stiles 57: 282 at the sight edges, tenons of 38. The face shoulder goes on by 6
  // over the moulding, and is hollowed from there to the sight edge, 4 deep.
  const Assembly leaf = wood(bevelled());
  const Piece rail = piece(leaf, "top rail");
  CHECK(rail.blank[0] == mm(282 + 76));
  const std::vector<Box> tenon = cuts(rail, "tenon");
  CHECK(tenon[0] == box(0, 0, 0, 32, 57, 6.075));
  CHECK(tenon[1] == box(32, 0, 4, 38, 57, 6.075));
  CHECK(tenon[2] == box(0, 0, 13.925, 38, 57, 20));
  CHECK(outline(rail, "tenon") == std::vector{corner(32, 0), corner(38, 4), corner(32, 4)});
  const Joint its = joint(leaf, "left stile", "top rail");
  CHECK(its.tenon->longer_at_face == mm(6));
  CHECK(its.tenon->longer_at_back == Length());
}

TEST_CASE("Cope-and-stick: a rail is as long as between the stiles and two copes of 3/8") {
  // WOOD, simple frame-and-panel doors: for two tenons of 3/8 the rail is W - 2S + 3/4. Leaf 18,
  // stiles 2 1/4: 14 1/4. Between the face shoulders, over mouldings of 3/8, as long as the rail.
  const Assembly leaf = wood(
      R"({"kind": "door", "units": "in", "opening": {"width": 18, "height": 28}, "clearance": 0,
          "thickness": "3/4", "stile_width": "2 1/4", "groove_depth": "3/8", "tenon_depth": "3/8",
          "groove": {"width": "1/4", "from_face": "7/16"},
          "edge": {"kind": "coped", "profile": "bevel", "width": "3/8", "depth": "3/8"}})");
  CHECK(piece(leaf, "top rail").blank[0] == inch(14, 1, 4));
  const Joint its = joint(leaf, "left stile", "top rail");
  CHECK(its.kind == JointKind::stub_tenon);
  CHECK(its.tenon->longer_at_face == inch(0, 3, 8));
}

TEST_CASE("An ovolo is a quarter round under a fillet, within 0.02 mm of its circle") {
  // Radius 6 about a point 6 from the edge and 7 deep: 7 - sqrt(36 - (6 - e)^2) deep at e.
  Piece stile = piece(wood(rounded("ovolo")), "left stile");
  stile.place = Place{};
  for (const double from_edge : {1.5, 3.0, 4.5, 5.9}) {
    const double deep = 7 - std::sqrt(36 - (6 - from_edge) * (6 - from_edge));
    const double off = deep_at(stile, from_edge) - deep;
    CHECK(off > -0.001);
    CHECK(off < 0.04);  // measured straight down, where the circle falls away
  }
  CHECK(deep_at(stile, 6.001) == 0);
}

TEST_CASE("A cove is the same, hollow") {
  // About a point on the sight edge, 1 deep: 1 + sqrt(36 - e^2).
  Piece stile = piece(wood(rounded("cove")), "left stile");
  stile.place = Place{};
  for (const double from_edge : {0.5, 2.0, 4.0, 5.0}) {
    const double off = deep_at(stile, from_edge) - (1 + std::sqrt(36 - from_edge * from_edge));
    CHECK(off < 0.001);
    CHECK(off > -0.04);
  }
}

TEST_CASE("With both faces moulded both shoulders are coped") {
  const Assembly leaf = wood(bevelled(R"("faces": "both")"));
  const Joint its = joint(leaf, "left stile", "top rail");
  CHECK(its.tenon->longer_at_face == mm(6));
  CHECK(its.tenon->longer_at_back == mm(6));
  const Feature& moulding = feature(piece(leaf, "left stile"), "moulding");
  REQUIRE(moulding.prisms.size() == 2);
  CHECK(moulding.prisms[1].outline == std::vector{corner(51, 20), corner(57, 16), corner(57, 20)});
}

TEST_CASE("A mortise in a coped rail is told from the back shoulder, which is square") {
  // One muntin of 50 in the middle of 282: 116 from the shoulder, 9 of groove, 0.4 of play.
  const Assembly leaf = wood(bevelled("", R"("panels": 2)"));
  const Joint its = joint(leaf, "top rail", "muntin");
  CHECK(its.mortise->from_shoulder == mm(116 + 9 - 0.4));
  CHECK(its.mortise->shoulder == "back");
}

TEST_CASE("What says nothing of a moulding gets an ovolo") {
  const Worked small = work(cabinet_mm(R"("edge": "coped")"));
  CHECK(assumed(small, "edge.width") == std::vector{mm(3)});
  CHECK(assumed(small, "edge.fillet") == std::vector{mm(1)});
  CHECK(assumed(small, "edge.depth") == std::vector{mm(4)});
  const Worked large = work(house_in(R"("edge": {"kind": "coped", "profile": "bevel"})"));
  CHECK(assumed(large, "edge.width") == std::vector{inch(0, 3, 8)});
  CHECK(assumed(large, "edge.depth") == std::vector{inch(0, 3, 8)});
}

TEST_CASE("A moulding that has no room is refused") {
  CHECK(refusal(cabinet_mm(R"("edge": {"kind": "coped", "profile": "bevel", "depth": 6})")) ==
        "/edge/depth: a moulding 6 mm deep comes to the groove or mortise, 6 mm from the face; "
        "make it less");
  CHECK(
      refusal(cabinet_mm(R"("edge": {"kind": "coped", "width": 3, "depth": 5})")) ==
      "/edge/depth: a quarter round 3 mm wide under a fillet of 1 mm is 4 mm deep, not 5 mm; give "
      "width or depth");
  CHECK(
      refusal(cabinet_mm(R"("edge": {"kind": "coped", "profile": "bevel", "width": 12, "depth": 4},
                              "tenon_depth": 9)")) ==
      "/edge/width: a shoulder coped over a moulding 12 mm wide reaches further than its tenon, "
      "9 mm deep; make the moulding narrower");
  CHECK(refusal(cabinet_mm(R"("edge": {"kind": "coped", "depth": 1, "fillet": 1})")) ==
        "/edge/fillet: a fillet of 1 mm leaves nothing of a moulding 1 mm deep; make it less");
  CHECK(refusal(cabinet_mm(R"("edge": {"kind": "rebated", "profile": "bevel"})")) ==
        "/edge/profile: a rebated edge has no such thing; take it out, or write another kind");
}

TEST_CASE(
    "With mitred sticking a rail is longer by both mouldings, its shoulders set back by them") {
  // Trade practice: width less both stiles, and both mouldings, and both tenons. 396 - 2 x 57 =
  // 282, with two mouldings of 6: 294 from shoulder to shoulder; tenons of 30: 354.
  const Assembly leaf = wood(mitred());
  const Piece rail = piece(leaf, "top rail");
  CHECK(rail.blank[0] == mm(354));
  CHECK(rail.place.origin[0] == mm(57 - 6 - 30));
  const Joint its = joint(leaf, "left stile", "top rail");
  CHECK(its.tenon->depth == mm(30));
  CHECK(its.tenon->set_back == mm(6));
  CHECK(its.tenon->longer_at_face == Length());
  // From the stile's edge: 6 + 30 + 2.
  CHECK(its.mortise->depth == mm(38));
}

TEST_CASE("The stile's moulding is cut away to the mitre, which goes from corner to corner of it") {
  // The leaf is 696 high, the top rail 57: its sight edge at 639. Beyond the mitre, from 645 on,
  // the stile's edge is cut back from 57 to 51, over the whole thickness.
  const Assembly leaf = wood(mitred());
  const Feature away = feature(piece(leaf, "left stile"), "moulding-mitre");
  CHECK(away.cuts == std::vector{box(645, 51, 0, 696, 57, 20)});
  CHECK(away.prisms.at(0).outline ==
        std::vector{corner(639, 57), corner(645, 57), corner(645, 51)});
  // The rail's own: its shoulder at 30 of its length, the sight line at 36.
  const Feature end = feature(piece(leaf, "top rail"), "moulding-mitre");
  CHECK(end.cuts.empty());
  CHECK(end.prisms.at(0).outline == std::vector{corner(36, 0), corner(30, 0), corner(30, 6)});
}

TEST_CASE("A middle rail is mitred at both its edges") {
  const Assembly leaf = wood(house_mm(R"("edge": "mitred")"));
  const Feature end = feature(piece(leaf, "lock rail"), "moulding-mitre");
  CHECK(end.prisms.size() == 2);
}

TEST_CASE("A tenon beside a mitre loses the moulding's width where the groove is less deep") {
  const Assembly leaf = wood(mitred(R"("groove_depth": 5)"));
  CHECK(joint(leaf, "left stile", "top rail").tenon->each.front().from_edge == mm(6));
}

TEST_CASE("Mitred sticking wants tenons in mortises") {
  CHECK(refusal(cabinet_mm(R"("edge": "mitred", "tenon_depth": 9)")) ==
        "/tenon_depth: a tenon of 9 mm does not go past the groove, 9 mm deep; make tenon_depth "
        "more");
}

}  // namespace haunch::test
