// Joints as they are seen: what runs on past an end shows as a hole beside it.
#include <functional>

#include "checks.h"
#include "edge.h"
#include "groove.h"
#include "vocabulary.h"

namespace haunch::test {
namespace {

/// A cabinet door 20 thick, all members 57 wide, whose rails end flat on the stiles: dowelled.
Assembly dowelled() {
  return wood(cabinet_mm(R"("joint": "dowel", "thickness": 20, "stile_width": 57,
                            "rail_widths": [57, 57], "groove_depth": 9)"));
}

/// The same but half-lapped: the stiles lie in front, the rails behind them.
Assembly half_lapped() {
  return wood(cabinet_mm(R"("joint": {"corner": "half-lap"}, "thickness": 20, "stile_width": 57,
                            "rail_widths": [57, 57], "groove_depth": 9)"));
}

EdgeDesign bevel(Length width, Length depth, MouldedFaces faces = MouldedFaces::front) {
  EdgeDesign edge;
  edge.kind = EdgeKind::coped;
  edge.faces = faces;
  edge.width = width;
  edge.depth = depth;
  return edge;
}

/// Sticks a moulding on one edge of a piece, and lets nothing else know of it.
Assembly moulded(Assembly leaf, std::string_view name, Edge edge, const EdgeDesign& design) {
  stick(leaf, piece_number(leaf, name), edge, design);
  return leaf;
}

/// Cuts something off a piece.
Assembly cut(Assembly leaf, std::string_view name, FeatureKind kind, const Box& away) {
  leaf.pieces[piece_number(leaf, name)].features.push_back({kind, {}, {away}, {}});
  return leaf;
}

/// What is told of joints as they are seen, in lines: "joint-shut-face fail 6 top rail".
std::string seen(const Assembly& leaf) {
  std::string text;
  for (const Finding& finding : check_assembly(leaf, Unit::mm)) {
    if (!finding.rule->check.starts_with("joint-shut")) continue;
    text += (text.empty() ? "" : "\n") + std::string(finding.rule->check) + " " +
            std::string(word_of(finding.status)) + " " + decimal(finding.value, Unit::mm) + " " +
            leaf.pieces[finding.parts.back()].name;
  }
  return text;
}

}  // namespace

TEST_CASE("Where a flat end stands on a square edge nothing is open") {
  CHECK(seen(dowelled()) == "");
  CHECK(seen(half_lapped()) == "");
}

TEST_CASE("A moulding that runs on behind a dowelled rail leaves a hole as wide as it is") {
  const Assembly leaf = moulded(dowelled(), "left stile", Edge::high, bevel(mm(6), mm(4)));
  CHECK(seen(leaf) == "joint-shut-face fail 6 top rail\njoint-shut-face fail 6 bottom rail");
}

TEST_CASE("A quarter round is as open as it is wide, though cut in many small slopes") {
  EdgeDesign edge = bevel(mm(8), mm(9));
  edge.profile = Moulding::ovolo;
  edge.fillet = mm(1);
  CHECK(seen(moulded(dowelled(), "right stile", Edge::low, edge)) ==
        "joint-shut-face fail 8 top rail\njoint-shut-face fail 8 bottom rail");
}

TEST_CASE("A moulding on both faces is seen from both") {
  const Assembly leaf =
      moulded(dowelled(), "left stile", Edge::high, bevel(mm(6), mm(4), MouldedFaces::both));
  CHECK(seen(leaf) ==
        "joint-shut-face fail 6 top rail\njoint-shut-back fail 6 top rail\n"
        "joint-shut-face fail 6 bottom rail\njoint-shut-back fail 6 bottom rail");
}

TEST_CASE("Where the rails are coped over it, or it is mitred with theirs, nothing is open") {
  for (const char* kind : {"coped", "mitred"})
    for (const char* profile : {"bevel", "ovolo", "cove"})
      for (const char* faces : {"front", "both"}) {
        INFO(kind << " " << profile << " " << faces);
        CHECK(seen(wood(house_mm(R"("panels": 2, "edge": {"kind": ")" + std::string(kind) +
                                 R"(", "profile": ")" + profile + R"(", "faces": ")" + faces +
                                 "\"}"))) == "");
      }
}

TEST_CASE("A cope that is left away opens the joint over the moulding's width") {
  // The face shoulder cut back square to the sight edge: the cope's box and its slope.
  Assembly leaf = wood(cabinet_mm(R"("thickness": 22, "mortise": {"width": 8},
      "edge": {"kind": "coped", "profile": "bevel", "width": 6, "depth": 4})"));
  const Piece rail = piece(leaf, "top rail");
  const Length depth = joint(leaf, "left stile", "top rail").tenon->depth;
  const Length cheek = joint(leaf, "left stile", "top rail").tenon->from_face;
  leaf = cut(std::move(leaf), "top rail", FeatureKind::tenon,
             {{Length(), Length(), Length()}, {depth, rail.blank[1], cheek}});
  CHECK(seen(leaf) == "joint-shut-face fail 6 top rail");
}

TEST_CASE("A rebate that runs on past a rail is open at the back, as wide as it is deep") {
  const Assembly leaf = cut(dowelled(), "left stile", FeatureKind::rebate,
                            {{Length(), mm(57 - 9), mm(8)}, {mm(696), mm(57), mm(20)}});
  CHECK(seen(leaf) == "joint-shut-back fail 9 top rail\njoint-shut-back fail 9 bottom rail");
  CHECK(seen(wood(cabinet_mm(R"("thickness": 20, "mortise": {"width": 8},
                                "edge": {"kind": "rebated"})"))) == "");
}

TEST_CASE("A groove that comes out at a stile's end shows in the leaf's outer edge alone") {
  // The groove in the middle of 20 is 8 wide.
  const Assembly leaf = cut(dowelled(), "left stile", FeatureKind::groove,
                            {{Length(), mm(57 - 9), mm(6)}, {mm(696), mm(57), mm(14)}});
  CHECK(seen(leaf) == "joint-shut-edge caution 8 top rail\njoint-shut-edge caution 8 bottom rail");
}

TEST_CASE("Of halves that lap, a moulding on either stands off the other's shoulder") {
  const EdgeDesign both = bevel(mm(6), mm(4), MouldedFaces::both);
  CHECK(seen(moulded(half_lapped(), "left stile", Edge::high, both)) ==
        "joint-shut-face fail 6 top rail\njoint-shut-face fail 6 bottom rail");
  CHECK(seen(moulded(half_lapped(), "top rail", Edge::low, both)) ==
        "joint-shut-back fail 6 top rail\njoint-shut-back fail 6 top rail");
}

TEST_CASE("An opening of 3 mm is the widest that does not fail, and one of 0.8 mm is not told") {
  const auto open_by = [](Length by) {
    return seen(moulded(dowelled(), "left stile", Edge::high, bevel(by, mm(4))));
  };
  CHECK(open_by(mm(0.8)) == "");
  CHECK(open_by(mm(0.8) + kStep).starts_with("joint-shut-face caution"));
  CHECK(open_by(mm(3)).starts_with("joint-shut-face caution"));
  CHECK(open_by(mm(3) + kStep).starts_with("joint-shut-face fail"));
}

}  // namespace haunch::test
