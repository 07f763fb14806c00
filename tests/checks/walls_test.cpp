// Wood left beside, behind, beyond and between mortises, and about grooves.
#include "corner.h"

namespace haunch::test {
namespace {

Breakage around(std::string says, CornerSizes sizes, Length CornerSizes::*size, Length limit,
                Length beyond, std::string verdict_at, std::string verdict_beyond,
                Unit unit = Unit::mm) {
  Breakage row{std::move(says), {}, std::move(verdict_at), {}, std::move(verdict_beyond), unit};
  sizes.*size = limit;
  row.at = corner(sizes);
  sizes.*size = limit + beyond;
  row.beyond = corner(sizes);
  return row;
}

/// 18 mm thick, a groove of 8 in the middle: a quarter is 4.5, less than 5.
CornerSizes thin() {
  CornerSizes sizes;
  sizes.thickness = mm(18);
  sizes.groove_from_face = mm(5);
  return sizes;
}

CornerSizes divided() {
  CornerSizes sizes;
  sizes.gap = mm(20);
  return sizes;
}

/// A groove on the stile's outer edge as well, so deep.
Assembly with_outer_groove(Length depth) {
  return corner_but([depth](Assembly& a) {
    Piece& stile = a.pieces[kStile];
    stile.features.push_back(
        {FeatureKind::groove, {}, {{{mm(0), mm(0), mm(8)}, {stile.blank[0], depth, mm(16)}}}, {}});
  });
}

}  // namespace

std::vector<Breakage> breakages_of_walls() {
  using S = CornerSizes;
  const auto less = -kStep;
  return {
      // A mortise of 8 in 24: walls of 6 to 10 are a quarter or more.
      around("a quarter of the thickness is left before the mortise", {}, &S::mortise_from_face,
             mm(6), less, "", "mortise-wall caution"),
      around("and behind it", {}, &S::mortise_from_face, mm(10), kStep, "", "mortise-wall caution"),
      around("5 mm where a quarter is less", thin(), &S::mortise_from_face, mm(5), less, "",
             "mortise-wall caution"),
      around("and in an inch shop too", thin(), &S::mortise_from_face, mm(5), less, "",
             "mortise-wall caution", Unit::inch),
      around("a wall under 3 mm fails", {}, &S::mortise_from_face, mm(3), less,
             "mortise-wall caution", "mortise-wall fail"),
      around("on the other side too", {}, &S::mortise_from_face, mm(13), kStep,
             "mortise-wall caution", "mortise-wall fail"),
      // Tenon 40, bottom 2: a stile of 47 leaves 5 behind.
      around("5 mm are left behind a mortise", {}, &S::stile, mm(47), less, "",
             "mortise-behind caution"),
      around("less than 3 mm fail", {}, &S::stile, mm(45), less, "mortise-behind caution",
             "mortise-behind fail"),
      // 18 behind the mortise, less a groove of 13 from the other side.
      {"up to a groove on the other edge", with_outer_groove(mm(13)), "",
       with_outer_groove(mm(13) + kStep), "mortise-behind caution"},
      // The play of 0.5 at the tenon's edge is taken out of its relish, but counts at the last.
      around("12 mm of relish are left", {}, &S::relish, mm(12), less, "", "mortise-end caution"),
      around("in an inch shop 1/2 in", {}, &S::relish, inch(0, 1, 2), less, "",
             "mortise-end caution", Unit::inch),
      around("less than 3 mm fail at the end", {}, &S::relish, mm(3.5), less, "mortise-end caution",
             "mortise-end fail"),
      // Both mortises are longer than their tenons by 0.5.
      around("5 mm are left between two mortises", divided(), &S::gap, mm(6), less, "",
             "mortise-between caution"),
      around("less than 3 mm fail between", divided(), &S::gap, mm(4), less,
             "mortise-between caution", "mortise-between fail"),
      around("5 mm are left before a groove", {}, &S::groove_from_face, mm(5), less, "",
             "groove-wall caution"),
      around("and behind", {}, &S::groove_from_face, mm(11), kStep, "", "groove-wall caution"),
      around("less than 3 mm fail before it", {}, &S::groove_from_face, mm(3), less,
             "groove-wall caution", "groove-wall fail"),
      // A muntin of 15 with a groove of 10.
      around("5 mm are left at a groove's bottom", {}, &S::muntin, mm(15), less, "",
             "groove-wall caution"),
      around("less than 3 mm fail at its bottom", {}, &S::muntin, mm(13), less,
             "groove-wall caution", "groove-wall fail, tenon-width fail"),
  };
}

TEST_CASE("Walls are measured to the step") {
  check_breakages(breakages_of_walls());
}

TEST_CASE("The least wall of a joint is reported, of the piece that is mortised") {
  CornerSizes sizes = divided();
  sizes.mortise_from_face = mm(7);
  for (const Finding& each : check_assembly(corner(sizes), Unit::mm)) {
    if (!each.rule->check.starts_with("mortise-")) continue;
    CHECK(each.parts == std::vector<std::size_t>{kStile});
    CHECK(each.joint == kTenon);
    if (each.rule->check == "mortise-wall") CHECK(each.value == mm(7));     // 7 and 9
    if (each.rule->check == "mortise-behind") CHECK(each.value == mm(18));  // 60 - 42
    if (each.rule->check == "mortise-end") CHECK(each.value == mm(29.5));   // 30 - 0.5, at the head
    if (each.rule->check == "mortise-between") CHECK(each.value == mm(19));  // 20 - 2 x 0.5
  }
}

TEST_CASE("A mortise right through leaves nothing behind, and no bottom to measure to") {
  CornerSizes sizes;
  sizes.stile = mm(42);
  CHECK(verdict(corner(sizes)) == "bottom-clearance fail, mortise-behind fail");
}

TEST_CASE("Mortises that meet across a piece have no wood between them") {
  // A second mortise of the same joint from the outer edge: 18 - 13 = 5 left, then a step less.
  const auto from_outside = [](Length depth) {
    return corner_but([depth](Assembly& a) {
      cuts_of(a, kStile, "mortise").push_back({{mm(130), mm(0), mm(8)}, {mm(150), depth, mm(16)}});
    });
  };
  const auto between = [](const Assembly& leaf) {
    for (const Finding& each : check_assembly(leaf, Unit::mm))
      if (each.rule->check == "mortise-between") return each.value;
    throw std::invalid_argument("no mortise-between");
  };
  CHECK(between(from_outside(mm(13))) == mm(5));
  CHECK(between(from_outside(mm(18))) == Length());
  CHECK(verdict(from_outside(mm(18))).find("mortise-between fail") != std::string::npos);
}

/// The least figure of a check, and what it comes to.
Finding least_of(const std::vector<Finding>& findings, std::string_view check) {
  const Finding* least = nullptr;
  for (const Finding& finding : findings)
    if (finding.rule->check == check && (least == nullptr || finding.value < least->value))
      least = &finding;
  REQUIRE(least != nullptr);
  return *least;
}

TEST_CASE("A fin between a mortise and the groove beside it is a wall too") {
  // The mortise takes 8 to 20 of the thickness, the groove 21 to 33.
  const Assembly leaf = wood(house_mm(
      R"("mortise": {"width": 12, "from_face": 8}, "groove": {"width": 12, "from_face": 21})"));
  const Finding wall = least_of(check_assembly(leaf, Unit::mm), "mortise-wall");
  CHECK(wall.value == mm(1));
  CHECK(wall.status == Status::fail);
}

TEST_CASE("Two mortises that pass corner to corner have that much wood between them") {
  // Inside 920 - 6 - 200 = 714: four panels of (714 - 270) / 4 = 111 above, three of 178 below. A
  // muntin's mortise is 90 - 24 + 0.8 = 66.8 wide, from 11.6 on. Muntins above begin at 211, 412,
  // 613, below at 278, 546: along the rail 278 + 11.6 - (211 + 78.4) = 0.2 apart. Both are 39.45 +
  // 2 deep in a rail of 83: in depth 83 - 82.9 = 0.1 apart.
  const Assembly leaf = wood(
      R"({"kind": "door", "units": "mm", "opening": {"width": 920, "height": 2060}, "panels": {"across": [4, 3]},
      "rail_widths": [100, 83, 150], "muntin_width": 90, "tenon": {"muntin_depth": 39.45}})");
  const Finding between = least_of(check_assembly(leaf, Unit::mm), "mortise-between");
  CHECK(between.value > mm(0.223));  // the root of 0.2 squared and 0.1 squared
  CHECK(between.value < mm(0.224));
  CHECK(between.status == Status::fail);
}

}  // namespace haunch::test
