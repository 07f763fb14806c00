// The whole: shared wood, the leaf's size, its face and its opening. The corner is 200 x 200 x 24
// in an opening of 206 x 206.
#include "corner.h"

namespace haunch::test {
namespace {

/// A block in the corner, its box changed a little.
Assembly with_block(Box box, std::size_t axis = 0, bool high = true, Length change = {}) {
  (high ? box.high : box.low)[axis] += change;
  return corner_but([&](Assembly& a) { add_block(a, box); });
}

}  // namespace

std::vector<Breakage> breakages_of_the_whole() {
  // Between the bottom of the stile's groove (50) and the panel (53); over the panel's back (15.8),
  // flush with the frame's (24); before its face (8.2), flush with the frame's (0).
  const Box slip = box(50, 0, 9, 53, 20, 15);
  const Box behind = box(80, 20, 15.8, 100, 40, 24);
  const Box before = box(80, 20, 0, 100, 40, 8.2);
  const auto size = [](std::size_t axis, Length change) {
    return corner_but([&](Assembly& a) { a.size[axis] += change; });
  };
  const auto opening = [](Length Fit::*side, Length change) {
    return corner_but([&](Assembly& a) { opening_of(a).*side += change; });
  };
  const auto room = [](Length Sides::*side) {
    return corner_but([&](Assembly& a) { opening_of(a).room.*side += kStep; });
  };
  return {
      {"a slip may touch the panel, but not stand in it", with_block(slip), "",
       with_block(slip, 0, true, kStep), "fouling fail"},
      {"nor in the stile", with_block(slip), "", with_block(slip, 0, false, -kStep),
       "fouling fail"},
      {"the wood is not wider than the leaf", corner(), "", size(0, -kStep), "leaf-width fail"},
      {"nor narrower", corner(), "", size(0, kStep), "face-closed fail, leaf-width fail"},
      {"nor higher", corner(), "", size(1, -kStep), "leaf-height fail"},
      {"nor lower", corner(), "", size(1, kStep), "face-closed fail, leaf-height fail"},
      {"nothing stands proud of the frame's back", with_block(behind), "",
       with_block(behind, 2, true, kStep), "panel-flush caution"},
      {"nor of its face", with_block(before), "", with_block(before, 2, false, -kStep),
       "panel-flush caution"},
      {"no light comes through below the panel", corner(), "", corner_but([](Assembly& a) {
         a.pieces[kPanel].place.origin[1] += kStep;
         a.pieces[kPanel].blank[0] -= kStep;
       }),
       "face-closed fail"},
      {"the leaf goes into its opening with the clearance at both sides", corner(), "",
       opening(&Fit::width, -kStep), "opening-width fail"},
      {"and with that asked at the left", corner(), "", room(&Sides::left), "opening-width fail"},
      {"and at the right", corner(), "", room(&Sides::right), "opening-width fail"},
      {"and at head and foot", corner(), "", opening(&Fit::height, -kStep), "opening-height fail"},
      {"and with that asked at the head", corner(), "", room(&Sides::head), "opening-height fail"},
      {"and at the foot", corner(), "", room(&Sides::foot), "opening-height fail"},
  };
}

TEST_CASE("The whole is right to the step") {
  check_breakages(breakages_of_the_whole());
}

TEST_CASE("Shared wood names the two pieces, and how deep one stands in the other") {
  // A block that laps 2 mm into the stile, over a length of 20 and the whole thickness.
  const Assembly leaf = corner_but([](Assembly& a) { add_block(a, box(-8, 150, 0, 2, 170, 24)); });
  bool found = false;
  for (const Finding& finding : check_assembly(leaf, Unit::mm)) {
    if (finding.rule->check != "fouling") continue;
    found = true;
    CHECK(finding.status == Status::fail);
    CHECK(finding.parts == std::vector<std::size_t>{kStile, 4});
    CHECK(finding.value == mm(2));
    CHECK(finding.max == Length());
  }
  CHECK(found);
}

TEST_CASE("A mortise is no wood: what stands in it shares none") {
  // Mortise 18..60 x 109.5..170.5 x 8..16, the tenon in it from 20 on.
  CHECK(
      verdict(corner_but([](Assembly& a) { add_block(a, box(18, 110, 8, 20, 120, 16)); })).empty());
  CHECK(verdict(corner_but([](Assembly& a) { add_block(a, box(17, 110, 8, 20, 120, 16)); })) ==
        "fouling fail");
}

TEST_CASE("A leaf that hangs nowhere is not held against an opening") {
  const Assembly leaf = corner_but([](Assembly& a) { a.fits.clear(); });
  for (const Finding& finding : check_assembly(leaf, Unit::mm))
    CHECK_FALSE(finding.rule->check.starts_with("opening"));
}

TEST_CASE("A leaf's checks see what slopes: a bevel on a panel's face changes none of them") {
  CHECK(verdict(corner()).empty());
  const Assembly bevelled = corner_but([](Assembly& leaf) {
    Piece& panel = leaf.pieces[kPanel];
    const Length half = floor_half(panel.blank[1]);
    panel.features.push_back(
        {FeatureKind::raise,
         {},
         {},
         {},
         {{0, mm(20), mm(60), {{half, Length()}, {half + mm(5), Length()}, {half, mm(1)}}}}});
  });
  CHECK(verdict(bevelled).empty());
}

TEST_CASE("A hole that slopes is a hole") {
  const Assembly holed = corner_but([](Assembly& leaf) {
    Piece& panel = leaf.pieces[kPanel];
    panel.features.push_back(
        {FeatureKind::bore,
         {},
         {},
         {},
         {{2, Length(), panel.blank[2], {{mm(30), mm(30)}, {mm(40), mm(30)}, {mm(30), mm(40)}}}}});
  });
  CHECK(verdict(holed) == "face-closed fail");
}

}  // namespace haunch::test
