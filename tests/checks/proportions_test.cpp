// Proportions of tenons, and the height of a lock rail.
#include "corner.h"

namespace haunch::test {
namespace {

Breakage around(std::string says, CornerSizes sizes, Length CornerSizes::*size, Length limit,
                Length beyond, std::string verdict_beyond, Unit unit = Unit::mm) {
  Breakage row{std::move(says), {}, "", {}, std::move(verdict_beyond), unit};
  sizes.*size = limit;
  row.at = corner(sizes);
  sizes.*size = limit + beyond;
  row.beyond = corner(sizes);
  return row;
}

/// Tenons that fill their mortises, 6 from the face: the walls are no more than a quarter.
CornerSizes stout() {
  CornerSizes sizes;
  sizes.fit = Length();
  sizes.mortise_from_face = mm(6);
  return sizes;
}

/// A groove narrow enough for a panel's edge of 3 mm; the stub in it is thicker than that, though
/// thin for a tenon.
CornerSizes thin_edge() {
  CornerSizes sizes;
  sizes.fit = mm(0.1);
  return sizes;
}

CornerSizes lock_rail() {
  CornerSizes sizes;
  sizes.is_lock_rail = true;
  return sizes;
}

}  // namespace

std::vector<Breakage> breakages_of_proportions() {
  using S = CornerSizes;
  return {
      // 3 x 7.8. (woodworking-school rule, after Moxon)
      around("a tenon is at least three times as deep as thick", {}, &S::tenon_depth, mm(23.4),
             -kStep, "tenon-depth caution"),
      // (Fairham 1917, Noyes 1910: a third; hard limits a quarter and a half)
      around("a tenon is not thinner than a quarter of the thickness", {}, &S::mortise_width,
             mm(6.2), -kStep, "tenon-thickness caution"),
      around("nor thicker than half of it, which costs it its walls too", stout(),
             &S::mortise_width, mm(12), kStep, "mortise-wall caution, tenon-thickness caution"),
      // Under 3 mm there is no tenon, and no edge of a panel.
      around("a tenon is 3 mm wide at least", {}, &S::tenon_width, mm(3), -kStep,
             "tenon-width fail"),
      doubted("tenon-thickness caution",
              around("a panel's edge is 3 mm thick at least", thin_edge(), &S::groove_width,
                     mm(3.4), -kStep, "panel-tongue caution, tenon-thickness caution")),
      // (how-to articles)
      around("a stub is 8 mm deep at least", {}, &S::stub_depth, mm(8), -kStep,
             "stub-depth caution"),
      around("in an inch shop 11/32 in", {}, &S::stub_depth, inch(0, 11, 32), -kStep,
             "stub-depth caution", Unit::inch),
      doubted("joint-shut-edge caution, stub-depth caution",
              around("under 3 mm there is no stub", {}, &S::stub_depth, mm(3), -kStep,
                     "joint-shut-edge caution, stub-depth fail")),
      around("0.4 mm are left below it", {}, &S::stub_depth, mm(9.6), kStep, "stub-bottom caution"),
      // (shop rule on the width limit of a glued tenon)
      around("no more than 100 mm of a tenon are glued", {}, &S::tenon_width, mm(100), kStep,
             "glued-width caution"),
      around("in an inch shop 4 in", {}, &S::tenon_width, inch(4), kStep, "glued-width caution",
             Unit::inch),
      around("nor of a stub", {}, &S::muntin, mm(110), kStep, "glued-width caution"),
      // 38 in = 965.2 mm, the rail 100 wide. (Building Construction, panelled doors)
      around("a lock rail's top stands no higher than 3 ft 2 in", lock_rail(), &S::sight_height,
             mm(865.2), kStep, "lock-rail-height caution"),
      around("in an inch shop too", lock_rail(), &S::sight_height, mm(865.2), kStep,
             "lock-rail-height caution", Unit::inch),
  };
}

TEST_CASE("Proportions are kept to the step") {
  check_breakages(breakages_of_proportions());
}

TEST_CASE("Only a lock rail is held to its height") {
  CornerSizes sizes;
  sizes.sight_height = mm(2000);
  CHECK(verdict(corner(sizes)).empty());
}

TEST_CASE("Of a divided tenon each is glued by itself") {
  // 20 and 30 between them, and 100; the whole 150.
  CornerSizes sizes;
  sizes.tenon_width = mm(150);
  sizes.gap = mm(30);
  CHECK(verdict(corner(sizes)).empty());
  sizes.gap = mm(30) - kStep;
  CHECK(verdict(corner(sizes)) == "glued-width caution");
}

}  // namespace haunch::test
