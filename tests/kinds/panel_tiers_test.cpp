// Panels that differ from tier to tier: whose word stands, what is noted, what is refused.
#include "vocabulary.h"

namespace haunch::test {
namespace {

/// A house door of two tiers, 44 mm thick, with a groove of 15 x 13 (14.5 to 29.5): 688 wide
/// between its stiles; 2054 - 118 - 195 - 230 = 1511 of sight height, the lock rail at 769 to 964.
std::string two_tiers(std::string_view panel) {
  return house_mm(R"("thickness": 44, "stile_width": 118,
                     "rail_widths": [118, {"width": 195, "top": 964}, 230],
                     "tenon_depth": 76, "groove_depth": 13, "groove": {"width": 15},
                     "panel": {)" +
                  std::string(panel) + "}");
}

}  // namespace

TEST_CASE("What a tier says of its panels stands before what is said of all panels") {
  const Assembly leaf = wood(two_tiers(
      R"("thickness": 22, "gap": 2, "tiers": [{"gap": {"across_grain": 4}}, {"thickness": 14.8}])"));
  // 688 + 2 x (13 - 4) = 706 above, 688 + 2 x (13 - 2) = 710 below.
  const Piece upper = piece(leaf, "panel, tier 1");
  CHECK(upper.blank[1] == mm(706));
  CHECK(upper.blank[0] == mm(2054 - 118 - 964 + 22));
  CHECK(upper.blank[2] == mm(22));
  REQUIRE(upper.features.size() == 1);
  const Piece lower = piece(leaf, "panel, tier 2");
  CHECK(lower.blank[1] == mm(710));
  CHECK(lower.blank[0] == mm(769 - 230 + 22));
  CHECK(lower.blank[2] == mm(14.8));
  CHECK(lower.features.empty());
  CHECK(joint(leaf, "left stile", "panel, tier 2").design.cheeks == mm(0.2));
}

TEST_CASE("One tier is raised, one flush, and the shape of all panels is that of the rest") {
  const Assembly leaf = wood(two_tiers(R"("raised": "front", "tiers": [{"flush": "front"}, {}])"));
  const Piece upper = piece(leaf, "panel, tier 1");
  CHECK(upper.place.origin[2] == Length());
  CHECK(upper.blank[2] == mm(29.3));  // 14.7 before the tongue of 14.6
  CHECK(upper.features[0].kind == FeatureKind::rebate);
  const Piece lower = piece(leaf, "panel, tier 2");
  CHECK(lower.blank[2] == mm(29));
  CHECK(lower.features[0].kind == FeatureKind::raise);
}

TEST_CASE("Level grain in one tier turns that tier's panels alone") {
  const Assembly leaf = wood(two_tiers(R"("tiers": [{}, {"grain": "level"}])"));
  CHECK(piece(leaf, "panel, tier 1").place.axes[0] == Axis::y);
  CHECK(piece(leaf, "panel, tier 2").place.axes[0] == Axis::x);
}

TEST_CASE("What is assumed alike in all tiers is noted once, what is not under its tier") {
  const Worked worked = work(two_tiers(R"("tiers": [{"thickness": 20}, {}])"));
  CHECK(assumed(worked, "panel.gap.across_grain") == std::vector{mm(3)});
  CHECK(assumed(worked, "panel.tiers.1.thickness") == std::vector{mm(14.6)});
  CHECK(assumed_under(worked, "panel.tiers.0.thickness").empty());
  CHECK(assumed_under(worked, "panel.thickness").empty());
}

TEST_CASE("A remedy may change one tier's panels, or what is said of all of them") {
  const auto its = job(two_tiers(R"("gap": 2, "tiers": [{"gap": 4}, {}])"));
  const auto lever = [&](std::string_view key) {
    for (const Lever& it : its->levers())
      if (it.key == key) return it;
    FAIL("no lever " << key);
    return Lever();
  };
  CHECK(lever("panel.gap.along_grain").value == mm(2));
  const Lever upper = lever("panel.tiers.0.gap.across_grain");
  CHECK(upper.value == mm(4));
  const Assembly leaf = its->with(upper, mm(5))->work().assembly;
  CHECK(piece(leaf, "panel, tier 1").blank[1] == mm(688 + 16));
  CHECK(piece(leaf, "panel, tier 2").blank[1] == mm(688 + 22));
  const Assembly other = its->with(lever("panel.gap.across_grain"), mm(1))->work().assembly;
  CHECK(piece(other, "panel, tier 1").blank[1] == mm(688 + 18));
  CHECK(piece(other, "panel, tier 2").blank[1] == mm(688 + 24));
}

TEST_CASE("A fault in a tier's panels is told at that tier") {
  CHECK(refused_at(two_tiers(
            R"("tiers": [{}, {"raised": "front", "raise": {"width": 9, "tongue": 13}}])")) ==
        "/panel/tiers/1/raise/width");
}

TEST_CASE("Sizes of a raise stand for the tiers that are raised, and for nothing else") {
  CHECK_NOTHROW(wood(two_tiers(R"("raise": {"width": 40}, "tiers": [{"raised": "front"}, {}])")));
  CHECK(refused_at(two_tiers(R"("raise": {"width": 40}, "tiers": [{}, {}])")) ==
        "/panel/raise/width");
  CHECK(refused_at(two_tiers(R"("tiers": [{}, {"raise": {"width": 40}}])")) ==
        "/panel/tiers/1/raise/width");
}

TEST_CASE("There is one object for each tier") {
  CHECK(refusal(two_tiers(R"("tiers": [{}])")) ==
        "/panel/tiers: gives panels for 1 tier, but 3 rails make 2; give one object for each tier "
        "from the top, "
        "{} where nothing is otherwise");
}

}  // namespace haunch::test
