// Ends scribed by subtraction: what an edge is worked to is read from its own features, and every
// joint's end goes on as far as that lets it.
#include "scribe.h"

#include "checks.h"
#include "shoulders.h"
#include "vocabulary.h"

namespace haunch::test {
namespace {

/// A cabinet door 20 thick, its edges moulded with a bevel 6 wide and 4 deep, or rebated 8 deep and
/// 12 from the back.
constexpr std::string_view kBevel = R"("profile": "bevel", "width": 6, "depth": 4)";

Assembly cabinet(std::string_view joint, std::string_view kind, std::string_view of_edge,
                 std::string_view more = {}) {
  return wood(cabinet_mm(R"("joint": ")" + std::string(joint) + R"(", "edge": {"kind": ")" +
                         std::string(kind) + R"(", )" + std::string(of_edge) + "}" +
                         (more.empty() ? "" : ", ") + std::string(more)));
}

Corner corner(double u, double v) {
  return {mm(u), mm(v)};
}

/// The profile of a stile's edge where the top rail ends on it.
EdgeProfile edge_of_stile(const Assembly& leaf) {
  return worked_edge(leaf, Junction(leaf, joint(leaf, "left stile", "top rail")));
}

Feature end_of(const Assembly& leaf, std::string_view rail) {
  for (const Feature& it : piece(leaf, rail).features)
    if (it.kind == FeatureKind::scribed_end) return it;
  throw std::invalid_argument("no scribed end");
}

/// What fails of a leaf.
std::vector<std::string> faults_of(const Assembly& leaf) {
  std::vector<std::string> faults;
  for (const Finding& finding : check_assembly(leaf, Unit::mm))
    if (finding.status == Status::fail) faults.emplace_back(finding.rule->check);
  return faults;
}

}  // namespace

TEST_CASE("A bevelled edge is worked back most at the face, and not at all behind the bevel") {
  const EdgeProfile edge = edge_of_stile(cabinet("haunched", "coped", kBevel));
  CHECK(edge.line == std::vector{corner(6, 0), corner(0, 4), corner(0, 20)});
  CHECK(edge.at_face() == mm(6));
  CHECK(edge.at_back() == Length());
}

TEST_CASE("A rebated edge is worked back behind its wall alone") {
  const EdgeProfile edge = edge_of_stile(cabinet("dowel", "rebated", R"("depth": 8, "width": 12)"));
  CHECK(edge.line == std::vector{corner(0, 0), corner(0, 8), corner(8, 8), corner(8, 20)});
  CHECK(edge.furthest() == mm(8));
  CHECK(edge.nearest() == Length());
}

TEST_CASE("Where a moulding is cut away, the edge is level there") {
  const EdgeProfile edge = edge_of_stile(cabinet("dowel", "mitred", kBevel));
  CHECK(edge.line == std::vector{corner(6, 0), corner(6, 20)});
}

TEST_CASE("A dowelled rail goes on over the moulding and loses what stands behind it") {
  // 396 - 2 x 57 = 282 between the sight edges; 6 more at each end, at the face alone.
  const Assembly leaf = cabinet("dowel", "coped", kBevel);
  const Piece& rail = piece(leaf, "top rail");
  CHECK(rail.blank[0] == mm(294));
  const Feature end = end_of(leaf, "top rail");
  REQUIRE(end.prisms.size() == 1);
  CHECK(end.prisms[0].outline == std::vector{corner(0, 0), corner(6, 4), corner(0, 4)});
  CHECK(end.cuts == std::vector{box(0, 0, 4, 6, 57, 20)});
  const Joint its = joint(leaf, "left stile", "top rail");
  REQUIRE(its.scribed);
  CHECK(its.scribed->longer_at_face == mm(6));
  CHECK(its.scribed->longer_at_back == Length());
}

TEST_CASE("A dowelled rail tells from shoulder to shoulder at the face and at the back") {
  const Assembly leaf = cabinet("dowel", "rebated", R"("depth": 8, "width": 12)");
  const Joint its = joint(leaf, "right stile", "top rail");
  const auto shoulders = shoulders_at(its, leaf.pieces[its.enters], shoulders_of(leaf)[its.enters]);
  REQUIRE(shoulders);
  CHECK(shoulders->face == mm(282));
  CHECK(shoulders->back == mm(298));
}

TEST_CASE("Twins behind a rebate's wall have all wood beside them down to its bottom") {
  // The rebate ends at the first mortise's near wall: 4 + 4 + 4 in 20, from 4.
  const Assembly leaf =
      cabinet("twin", "rebated", R"("depth": 8)", R"("twin": {"width": 4, "between": 4})");
  const Joint its = joint(leaf, "left stile", "top rail");
  CHECK(its.tenon->longer_at_back == mm(8));
  CHECK(faults_of(leaf) == std::vector<std::string>{});
}

TEST_CASE("A bridle's tenon ends at the outer edge, however far its shoulder is set back") {
  const Assembly leaf = cabinet("bridle", "mitred", kBevel);
  const Joint its = joint(leaf, "left stile", "top rail");
  CHECK(its.tenon->depth == mm(57 - 6));
  CHECK(piece(leaf, "top rail").blank[0] == leaf.size[0]);
}

TEST_CASE("Beside a half-lap the moulding is mitred in front, and the back is whole") {
  const Assembly leaf = cabinet("half-lap", "mitred", kBevel);
  for (const Feature& it : piece(leaf, "left stile").features)
    if (it.kind == FeatureKind::moulding_mitre) CHECK(it.cuts.front().high[2] == mm(10));
  CHECK(faults_of(leaf) == std::vector<std::string>{});
}

TEST_CASE("A half-lap with a coped shoulder is refused: it is laid in from behind") {
  CHECK(refusal(cabinet_mm(R"("joint": "half-lap", "edge": "coped")")) ==
        "/edge/kind: a half-lap is laid in from behind, where a shoulder coped over the moulding "
        "would catch; write \"mitred\", or another joint");
}

}  // namespace haunch::test
