// Raised panels: what is cut, where it lies, what is refused.
#include "raise.h"

#include <cmath>

#include "findings.h"
#include "vocabulary.h"

namespace haunch::test {
namespace {

/// A house door of one panel, 44 mm thick, with a groove of 15 x 13 (14.5 to 29.5). The tongue is
/// 14.6 thick, from 14.7 to 29.3.
std::string one_panel(std::string_view panel) {
  return house_mm(R"("thickness": 44, "stile_width": 118, "rail_widths": [118, 230],
                     "tenon_depth": 76, "groove_depth": 13, "groove": {"width": 15},
                     "panel": {)" +
                  std::string(panel) + "}");
}

Piece panel(std::string_view keys) {
  return piece(wood(one_panel(keys)), "panel");
}

/// How thick the wood of a panel is, so far from the middle of its left edge.
Length thickness_at(const Piece& panel, double from_edge) {
  Piece lying = panel;
  lying.place = Place{};
  const Length middle = floor_half(panel.blank[0]);
  const Box column{{middle, mm(from_edge), Length()},
                   {middle + mm(1), mm(from_edge) + Length::from_steps(1), panel.blank[2]}};
  return room_of(clipped(solid_of(lying).wood, column)).extent(2);
}

bool within(Length a, double millimetres, double off) {
  return std::abs(static_cast<double>(a.steps()) / 1.6e6 - millimetres) < off;
}

}  // namespace

TEST_CASE(
    "A panel raised in front has a tongue as long as the groove is deep, then a bevel of 26") {
  // Level with the frame's face it would be 14.7 + 14.6 = 29.3 thick: 29. So 14.4 come off over the
  // tongue; the bevel rises 12.4 to the foot of a shoulder of 2.
  const Assembly leaf = wood(one_panel(R"("raised": "front")"));
  const Piece its = piece(leaf, "panel");
  CHECK(its.blank[2] == mm(29));
  CHECK(its.place.origin[2] == mm(0.3));
  CHECK(within(thickness_at(its, 0), 14.6, 1e-6));
  CHECK(within(thickness_at(its, 12.9), 14.6, 1e-6));
  CHECK(within(thickness_at(its, 13 + 13), 14.6 + 6.2, 1e-5));
  CHECK(within(thickness_at(its, 38.99), 14.6 + 12.4, 0.01));
  CHECK(thickness_at(its, 39) == mm(29));
  CHECK(joint(leaf, "left stile", "panel").design.cheeks == mm(0.4));
}

TEST_CASE("Raised at the back, it lies with its face at the groove's near wall") {
  const Piece its = panel(R"("raised": "back", "thickness": 25)");
  CHECK(its.place.origin[2] == mm(14.7));
  REQUIRE(its.features.size() == 1);
  CHECK(its.features[0].cuts.front().low[2] == mm(14.6));
  CHECK(its.features[0].cuts.front().high[2] == mm(25));
}

TEST_CASE("Raised on both faces, each has half of what comes off") {
  // Level with both faces of the frame: 14.6 + 2 x 14.7 = 44.
  const Piece its = panel(R"("raised": "both")");
  CHECK(its.blank[2] == mm(44));
  CHECK(its.place.origin[2] == Length());
  REQUIRE(its.features.size() == 2);
  CHECK(its.features[0].cuts.front().extent(2) == mm(14.7));
  CHECK(its.features[1].cuts.front().extent(2) == mm(14.7));
}

TEST_CASE("Where two bevels meet, the corner of the field is mitred") {
  // 40 from both edges of an upright panel is field; 20 from one and 39 from the other is as deep
  // as 20 from the one alone.
  Piece its = panel(R"("raised": "front")");
  its.place = Place{};
  const auto deep = [&](double in_length, double in_width) {
    const Box column{{mm(in_length), mm(in_width), Length()},
                     {mm(in_length) + Length::from_steps(1), mm(in_width) + Length::from_steps(1),
                      its.blank[2]}};
    return room_of(clipped(solid_of(its).wood, column)).low[2];
  };
  CHECK(deep(40, 40) == Length());
  CHECK(within(deep(20, 38), 14.4 - 12.4 * 7 / 26, 1e-5));
  CHECK(within(deep(38, 20), 14.4 - 12.4 * 7 / 26, 1e-5));
}

TEST_CASE("A cove leaves the tongue level and follows its circle within 0.02 mm") {
  // 24 over a rise of 8: the radius is (24² + 8²) / 16 = 40. Halfway, 12 in: 40 - sqrt(1600 - 144).
  const Piece its = panel(
      R"("raised": "back", "thickness": 24.6,
         "raise": {"profile": "cove", "tongue": 13, "width": 37, "shoulder": 2})");
  const auto named = [&](std::string_view name) {
    for (const NamedSize& size : its.features[0].sizes)
      if (word_of(size.name) == name) return size.size;
    return Length();
  };
  CHECK(named("radius") == mm(40));
  CHECK(named("depth") == mm(10));
  for (const double in : {1.0, 6.0, 12.0, 18.0, 23.0}) {
    const double rise = 40 - std::sqrt(1600 - in * in);
    const double over =
        static_cast<double>(thickness_at(its, 13 + in).steps()) / 1.6e6 - 14.6 - rise;
    CHECK(over > -0.001);
    CHECK(over < 0.021);
  }
}

TEST_CASE("A cove meets the groove's lip where its circle does, not where a chord would") {
  // A side edge stands 13 - 3 in its groove, so the tongue of 13 ends 3 outside the lip. The circle
  // of 40 is 0.2 above the tongue, half of the play, sqrt(40² - 39.8²) = 3.995 further on.
  const auto free = [](std::string_view more, std::string_view side) {
    const Assembly leaf = wood(
        one_panel(R"("raise": {"profile": "cove", "tongue": 13, "width": 37, "shoulder": 2}, )" +
                  std::string(more)));
    for (const Finding& it : findings(leaf, "panel-wedge"))
      if (leaf.pieces[leaf.joints[*it.joint].receives].name == side) return it.value;
    throw std::invalid_argument("no such edge");
  };
  const double on = std::sqrt(1600 - 39.8 * 39.8);
  for (const char* raised :
       {R"("raised": "back", "thickness": 24.6)", R"("raised": "front", "thickness": 24.6)",
        R"("raised": "both", "thickness": 34.6)"}) {
    INFO(raised);
    CHECK(within(free(raised, "left stile"), 3 + on, 1e-5));
    // At the ends the gap is 1.
    CHECK(within(free(raised, "top rail"), 1 + on, 1e-5));
  }
  // A play of 1 in all.
  CHECK(within(free(R"("raised": "back", "thickness": 24, "allowance": 1)", "left stile"),
               3 + std::sqrt(1600 - 39.5 * 39.5), 1e-5));
}

TEST_CASE("What tells of a raise is assumed with its reason where the spec is silent") {
  const Worked worked = work(one_panel(R"("raised": "front", "raise": {"shoulder": 0})"));
  CHECK(assumed(worked, "panel.raise.tongue") == std::vector{mm(13)});
  CHECK(assumed(worked, "panel.raise.width") == std::vector{mm(39)});
  CHECK(assumed(worked, "panel.thickness") == std::vector{mm(29)});
  CHECK(assumed_under(worked, "panel.raise.shoulder").empty());
  CHECK(assumed_under(worked, "panel.rebate").empty());
}

TEST_CASE("A raise that cannot be cut is refused where it is written") {
  CHECK(refusal(one_panel(R"("raise": {"tongue": 13})")) ==
        "/panel/raise/tongue: is of a raised panel, but nothing is raised; say which face: "
        "\"raised\": \"front\", \"back\" or \"both\"");
  CHECK(refusal(one_panel(R"("raised": "front", "rebate": "back")")) ==
        "/panel/rebate: a raised panel has no rebate; keep one of the two");
  CHECK(refusal(one_panel(R"("raised": "front", "thickness": 14)")) ==
        "/panel/thickness: a raised panel is thicker than its tongue of 14.6 mm; 14 mm is not");
  CHECK(
      refusal(one_panel(R"("raised": "front", "raise": {"width": 13})")) ==
      "/panel/raise/width: a raise 13 mm wide with a tongue of 13 mm has no slope; make it wider");
  CHECK(
      refusal(one_panel(R"("raised": "front", "raise": {"shoulder": 14.4})")) ==
      "/panel/raise/shoulder: the field stands 14.4 mm over the tongue, and a shoulder of 14.4 mm "
      "leaves nothing to slope; make the shoulder less");
  CHECK(refusal(one_panel(R"("raised": "front", "raise": {"profile": "cove", "width": 20})")) ==
        "/panel/raise/width: a cove 7 mm wide cannot rise 12.4 mm; make it at least as wide as it "
        "is high");
  CHECK(refusal(one_panel(R"("raised": "front", "raise": {"width": 354})")) ==
        "/panel/raise/width: leaves a panel of 708 mm by 1730 mm, all of it raise; make "
        "panel.raise.width less, or the leaf larger");
}

TEST_CASE("A flush panel is rebated so that its face is level with the frame's") {
  // 14.7 before the tongue of 14.6, and 14.7 behind it.
  const Piece front = panel(R"("flush": "front")");
  CHECK(front.place.origin[2] == Length());
  CHECK(front.blank[2] == mm(29.3));
  CHECK(front.features[0].cuts.front().high[2] == mm(14.7));
  const Piece back = panel(R"("flush": "back")");
  CHECK(back.place.origin[2] == mm(14.7));
  CHECK(back.blank[2] == mm(29.3));
  CHECK(panel(R"("flush": "both")").blank[2] == mm(44));
}

TEST_CASE("Flush on both faces, the tongue stands in its groove, wherever that is") {
  // The groove from 10 to 25: 10.2 before the tongue, 19.2 behind it.
  const Piece its =
      piece(wood(house_mm(R"("thickness": 44, "groove": {"width": 15, "from_face": 10}, "panels": 2,
                       "rail_widths": [118, 118, 230], "panel": {"flush": "both"})")),
            "panel, tier 1");
  REQUIRE(its.features.size() == 2);
  CHECK(its.features[0].cuts.front().extent(2) == mm(10.2));
  CHECK(its.features[1].cuts.front().extent(2) == mm(19.2));
}

TEST_CASE("A panel is raised, rebated or flush: one of them") {
  CHECK(refusal(one_panel(R"("flush": "front", "rebate": "front")")) ==
        "/panel/rebate: \"flush\" says where the rebate is; take this out");
  CHECK(refusal(one_panel(R"("flush": "front", "raised": "front")")) ==
        "/panel/flush: a panel is raised or flush; keep one of the two");
  CHECK(
      refusal(one_panel(R"("flush": "front", "thickness": 20)")) ==
      "/panel/thickness: a flush panel is as thick as its groove's place makes it; take this out, "
      "or write \"rebate\" instead of \"flush\"");
}

}  // namespace haunch::test
