// Fits: each clearance as designed, to the step, and within the trade's limits.
#include "corner.h"
#include "raise.h"

namespace haunch::test {
namespace {

Assembly sized(Length CornerSizes::*size, Length value) {
  CornerSizes sizes;
  sizes.*size = value;
  return corner(sizes);
}

/// At the limit, and one step more or less.
Breakage around(std::string says, Length CornerSizes::*size, Length limit, Length beyond,
                std::string verdict, Unit unit = Unit::mm) {
  return {std::move(says),
          sized(size, limit),
          "",
          sized(size, limit + beyond),
          std::move(verdict),
          unit};
}

/// One step too tight: the wood is made so, the joints were designed to the limit.
Breakage forced(std::string says, Length CornerSizes::*size, Length limit, Length beyond,
                std::string verdict) {
  Breakage row = around(std::move(says), size, limit, beyond, std::move(verdict));
  row.beyond.joints = row.at.joints;
  return row;
}

/// The mortise made otherwise than the tenon wants it.
Breakage mortise(std::string says, std::size_t axis, bool high, Length change,
                 std::string verdict) {
  return {std::move(says), corner(), "", corner_but([=](Assembly& a) {
            Box& cut = cuts_of(a, kStile, "mortise").front();
            (high ? cut.high : cut.low)[axis] += change;
          }),
          std::move(verdict)};
}

/// The panel made otherwise than its grooves want it.
Breakage panel(std::string says, std::size_t axis, Length change, std::string verdict) {
  return {std::move(says), corner(), "",
          corner_but([=](Assembly& a) { a.pieces[kPanel].blank[axis] += change; }),
          std::move(verdict)};
}

/// A thicker panel whose back is raised: from a flat tongue of so much, 5 mm over 20, in a groove
/// that leaves 0.2 before its back wall. Of the tongue 7 mm stand in the groove.
Assembly raised(Length tongue) {
  return corner_but([=](Assembly& a) {
    Piece& panel = a.pieces[kPanel];
    panel.blank[2] += mm(5);
    raise_round(panel, {Profile::bevel, tongue + mm(20), tongue, Length()}, mm(5), true, mm(0.2));
  });
}

}  // namespace

std::vector<Breakage> breakages_of_fits() {
  return {
      // The mortise in the stile's own axes: length (edges), width (bottom), thickness (cheeks).
      mortise("a mortise is not wider than designed", 2, true, kStep, "cheek-fit fail"),
      mortise("nor narrower", 2, false, kStep, "cheek-fit fail"),
      mortise("nor longer", 0, true, kStep, "edge-fit fail"),
      mortise("nor shorter", 0, false, kStep, "edge-fit fail"),
      mortise("nor deeper", 1, false, -kStep, "bottom-clearance fail"),
      mortise("nor shallower", 1, false, kStep, "bottom-clearance fail"),
      around("a fit is not looser than 0.25 mm", &CornerSizes::fit, mm(0.25), kStep,
             "cheek-fit caution, stub-fit caution"),
      around("or, in an inch shop, 0.010 in", &CornerSizes::fit, mm(0.254), kStep,
             "cheek-fit caution, stub-fit caution", Unit::inch),
      {"a tenon may fill its mortise, but not be thicker", sized(&CornerSizes::fit, Length()), "",
       corner_but([](Assembly& a) { cuts_of(a, kStile, "mortise").front().low[2] += kStep; },
                  [] {
                    CornerSizes sizes;
                    sizes.fit = Length();
                    return sizes;
                  }()),
       "cheek-fit fail, fouling fail"},
      forced("edges may have no play", &CornerSizes::edge, Length(), -kStep,
             "edge-fit fail, fouling fail"),
      forced("a tenon may touch the bottom, but not pass it", &CornerSizes::bottom, Length(),
             -kStep, "bottom-clearance fail, fouling fail"),
      {"the shoulder is closed", corner(), "", corner_but([](Assembly& a) {
         // A saw cut more all round the tenon. Where the rail's groove comes out beside the tenon,
         // one sees through it.
         for (Box& cut : cuts_of(a, kRail, "tenon"))
           if (cut.high[0] == mm(40)) cut.high[0] += kStep;
       }),
       "face-closed fail, shoulder-seat fail"},
      forced("a haunch may touch the groove's bottom, but not pass it", &CornerSizes::haunch_depth,
             mm(10), kStep, "haunch-room fail, fouling fail"),
      {"a stub is not thinner than designed", corner(), "", corner_but([](Assembly& a) {
         cuts_of(a, kMuntin, "tenon")
             .push_back({{mm(100), mm(0), mm(0)}, {mm(109.6), mm(60), mm(8.1) + kStep}});
       }),
       "stub-fit fail"},
      doubted(
          "stub-bottom caution",
          forced("a stub may touch the groove's bottom, but not pass it", &CornerSizes::stub_depth,
                 mm(10), kStep, "bottom-clearance fail, fouling fail, stub-bottom caution")),
      {"a stub is not shorter than designed", corner(), "",
       corner_but([](Assembly& a) { a.pieces[kMuntin].blank[0] -= kStep; }),
       "bottom-clearance fail"},
      panel("a panel is not thinner than designed", 2, -kStep, "panel-play fail"),
      panel("nor thicker", 2, kStep, "panel-play fail"),
      panel("nor wider", 1, kStep, "panel-room fail"),
      panel("nor narrower", 1, -kStep, "panel-room fail"),
      panel("nor longer", 0, kStep, "panel-room fail"),
      panel("nor shorter", 0, -kStep, "panel-room fail"),
      around("a panel does not rattle in its groove, over 0.8 mm", &CornerSizes::panel_play,
             mm(0.8), kStep, "panel-play caution"),
      around("or, in an inch shop, over 1/32", &CornerSizes::panel_play, inch(0, 1, 32), kStep,
             "panel-play caution", Unit::inch),
      forced("a panel may fill its groove, but not pinch", &CornerSizes::panel_play, Length(),
             -kStep, "panel-play fail, fouling fail"),
      forced("a panel may touch the groove's bottom, but not pass it", &CornerSizes::panel_gap,
             Length(), -kStep, "panel-room fail, fouling fail"),
      around("3 mm of a panel stand in the groove", &CornerSizes::panel_gap, mm(7), kStep,
             "panel-bite fail"),
      around("or, in an inch shop, 1/8", &CornerSizes::panel_gap, mm(10 - 3.175), kStep,
             "panel-bite fail", Unit::inch),
      // The slope comes to the wall 0.2 x 4 beyond the tongue, 2.2 of which stand outside: 3 mm, as
      // much as the gap below the edge.
      {"a raised panel reaches the bottom before its slope comes to the mouth", raised(mm(9.2)), "",
       raised(mm(9.2) - kStep), "panel-wedge fail"},
  };
}

TEST_CASE("Fits are right to the step") {
  check_breakages(breakages_of_fits());
}

TEST_CASE("A panel that does not reach its groove has no bite, and light comes through") {
  CHECK(verdict(sized(&CornerSizes::panel_gap, mm(10) + kStep)) ==
        "face-closed fail, panel-bite fail");
}

TEST_CASE("A tenon that is missing is no tenon that fits") {
  const Assembly leaf = corner_but(
      [](Assembly& a) { cuts_of(a, kRail, "tenon").push_back(box(0, 0, 0, 40, 100, 24)); });
  // Without its haunch the groove is open at the stile's end.
  CHECK(verdict(leaf) ==
        "bottom-clearance fail, cheek-fit fail, edge-fit fail, haunch-room fail, "
        "joint-shut-edge caution");
}

TEST_CASE("Both tenons of a divided one are measured") {
  CornerSizes divided;
  divided.gap = mm(20);
  CHECK(verdict(corner(divided)).empty());
  for (const std::size_t each : {0U, 1U}) {
    CHECK(verdict(corner_but(
              [each](Assembly& a) { cuts_of(a, kStile, "mortise")[each].high[0] -= kStep; },
              divided)) == "edge-fit fail");
    CHECK(verdict(corner_but(
              [each](Assembly& a) { cuts_of(a, kStile, "mortise")[each].low[1] += kStep; },
              divided)) == "bottom-clearance fail");
    CHECK(verdict(corner_but(
              [each](Assembly& a) { cuts_of(a, kStile, "mortise")[each].low[2] += kStep; },
              divided)) == "cheek-fit fail");
  }
}

TEST_CASE("The limit that is reported is the one that is broken") {
  const auto cheeks = [](const Assembly& leaf) {
    for (const Finding& each : check_assembly(leaf, Unit::mm))
      if (each.rule->check == "cheek-fit") return each;
    throw std::invalid_argument("no cheek-fit");
  };
  // Wider than designed by a step: the design's 0.2. As loose as designed: the trade's 0.25.
  const Finding wide = cheeks(
      corner_but([](Assembly& a) { cuts_of(a, kStile, "mortise").front().high[2] += kStep; }));
  CHECK(wide.status == Status::fail);
  CHECK(wide.value == mm(0.2) + kStep);
  CHECK(wide.max == mm(0.2));
  const Finding loose = cheeks(sized(&CornerSizes::fit, mm(0.3)));
  CHECK(loose.status == Status::caution);
  CHECK(loose.value == mm(0.3));
  CHECK(loose.max == mm(0.25));
}

TEST_CASE("Of each joint every clearance is reported, with its design as the limit") {
  const std::vector<Finding> findings = check_assembly(corner(), Unit::mm);
  const auto find = [&](std::string_view check, std::size_t joint) {
    for (const Finding& each : findings)
      if (each.rule->check == check && each.joint == joint) return each;
    throw std::invalid_argument("no " + std::string(check));
  };
  CHECK(find("cheek-fit", kTenon).value == mm(0.2));
  CHECK(find("cheek-fit", kTenon).min == mm(0.2));
  CHECK(find("cheek-fit", kTenon).max == mm(0.25));
  CHECK(find("cheek-fit", kTenon).parts == std::vector<std::size_t>{kStile, kRail});
  CHECK(find("edge-fit", kTenon).value == mm(1));
  CHECK(find("bottom-clearance", kTenon).value == mm(2));
  CHECK(find("shoulder-seat", kTenon).value == Length());
  CHECK(find("haunch-room", kTenon).value == mm(0.5));
  CHECK(find("stub-fit", kStub).value == mm(0.2));
  CHECK(find("bottom-clearance", kStub).value == mm(0.4));
  CHECK(find("shoulder-seat", kStub).value == Length());
  for (const std::size_t joint : {kPanelLeft, kPanelTop, kPanelRight}) {
    CHECK(find("panel-play", joint).value == mm(0.4));
    CHECK(find("panel-room", joint).value == mm(3));
    CHECK(find("panel-bite", joint).value == mm(7));
    CHECK(find("panel-bite", joint).min == mm(3));
  }
}

}  // namespace haunch::test
