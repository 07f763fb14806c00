// The second opinion must be able to say no: one small door made by hand, and one thing wrong with
// it at a time.

#include <algorithm>
#include <cmath>

#include "catch.h"
#include "wood_oracle.h"

namespace haunch::test {

namespace {

Length mm(double value) {
  return Length::from_mm_thousandths(std::llround(value * 1000));
}

constexpr Length kStep = Length::from_steps(1);

Box box(const std::array<double, 6>& mms) {
  return {{mm(mms[0]), mm(mms[1]), mm(mms[2])}, {mm(mms[3]), mm(mms[4]), mm(mms[5])}};
}

Piece piece(const std::string& mark, Role role, const std::array<double, 6>& size_at, Axis length,
            Axis width) {
  Piece made;
  made.mark = mark;
  made.role = role;
  made.blank = {mm(size_at[0]), mm(size_at[1]), mm(size_at[2])};
  made.place = {{mm(size_at[3]), mm(size_at[4]), mm(size_at[5])}, {length, width, Axis::z}};
  return made;
}

/// A stile 600 x 60 x 20 with a groove 9 deep, 6 wide, and two mortises 32 deep: joints `low` and
/// `high`.
Piece stile(const std::string& mark, double x, std::size_t low, std::size_t high) {
  const bool left = x == 0;
  const double groove = left ? 51 : 0;
  const double mortise = left ? 28 : 0;
  Piece made = piece(mark, Role::stile, {600, 60, 20, x, 0, 0}, Axis::y, Axis::x);
  made.features = {
      {FeatureKind::groove, {left ? 4U : 5U}, {box({0, groove, 7, 600, groove + 9, 13})}, {}},
      {FeatureKind::mortise, {low}, {box({14.5, mortise, 7, 51.5, mortise + 32, 13})}, {}},
      {FeatureKind::mortise, {high}, {box({548.5, mortise, 7, 585.5, mortise + 32, 13})}, {}},
  };
  return made;
}

/// A rail 280 between shoulders and 60 wide, its tenons 30 deep, 36 wide, 5.8 thick, with
/// haunches 8.5 deep.
Piece rail(const std::string& mark, bool top, std::size_t left, std::size_t right) {
  const double groove = top ? 0 : 51;
  const double relish = top ? 45 : 0;
  Piece made = piece(mark, Role::rail, {340, 60, 20, 30, top ? 540.0 : 0.0, 0}, Axis::x, Axis::y);
  made.features.push_back(
      {FeatureKind::groove, {top ? 6U : 7U}, {box({0, groove, 7, 340, groove + 9, 13})}, {}});
  for (const bool end : {false, true}) {
    const double from = end ? 310 : 0;
    const double tip = end ? 318.5 : 0;
    made.features.push_back(
        {FeatureKind::tenon,
         {end ? right : left},
         {box({from, 0, 0, from + 30, 60, 7.1}), box({from, 0, 12.9, from + 30, 60, 20}),
          box({from, groove, 0, from + 30, groove + 9, 20}),
          box({tip, relish, 0, tip + 21.5, relish + 15, 20})},
         {}});
  }
  return made;
}

/// 15 of relish at the rail's outer edge, 9 of groove at the other.
TenonSizes said_tenon(bool top) {
  TenonSizes said;
  said.thickness = mm(5.8);
  said.width = mm(36);
  said.depth = mm(30);
  said.from_face = mm(7.1);
  said.each = {{mm(top ? 9 : 15), mm(36)}};
  said.haunches = {{mm(top ? 45 : 0), mm(15)}};
  said.haunch_depth = mm(8.5);
  said.haunch_thickness = mm(5.8);
  return said;
}

Joint tenon_joint(std::size_t receives, std::size_t enters, bool rightwards, double from_foot) {
  Joint joint;
  joint.kind = JointKind::mortise_and_tenon;
  joint.receives = receives;
  joint.enters = enters;
  joint.heading = {Axis::x, rightwards};
  joint.design = {mm(0.2), mm(1), mm(2), std::nullopt};
  joint.tenon = said_tenon(from_foot > 300);
  joint.mortise = MortiseSizes{mm(6), mm(32), mm(7), std::nullopt, {{mm(from_foot), mm(37)}}};
  return joint;
}

Joint panel_joint(std::size_t receives, Axis axis, bool upwards, double gap) {
  Joint joint;
  joint.kind = JointKind::panel_in_groove;
  joint.receives = receives;
  joint.enters = 4;
  joint.heading = {axis, upwards};
  joint.design = {mm(0.4), std::nullopt, mm(gap), mm(9 - gap)};
  return joint;
}

/// 400 x 600 x 20: stiles A, B; top rail C, bottom rail D; a flat panel E, 3 short across its grain
/// and 1 along.
Assembly small_door() {
  Assembly door;
  door.size = {mm(400), mm(600), mm(20)};
  door.pieces = {stile("A", 0, 1, 0), stile("B", 340, 3, 2), rail("C", true, 0, 2),
                 rail("D", false, 1, 3),
                 piece("E", Role::panel, {496, 292, 5.6, 54, 52, 7.2}, Axis::y, Axis::x)};
  door.joints = {tenon_joint(0, 2, false, 548.5),   tenon_joint(0, 3, false, 14.5),
                 tenon_joint(1, 2, true, 548.5),    tenon_joint(1, 3, true, 14.5),
                 panel_joint(0, Axis::x, false, 3), panel_joint(1, Axis::x, true, 3),
                 panel_joint(2, Axis::y, true, 1),  panel_joint(3, Axis::y, false, 1)};
  return door;
}

Piece& marked(Assembly& door, const std::string& mark) {
  return *std::find_if(door.pieces.begin(), door.pieces.end(),
                       [&](const Piece& each) { return each.mark == mark; });
}

Feature& feature(Piece& piece, std::string_view kind) {
  return *std::find_if(piece.features.begin(), piece.features.end(),
                       [&](const Feature& each) { return word_of(each.kind) == kind; });
}

bool finds(const Assembly& door, FaultKind kind) {
  const auto faults = judge(door);
  return std::any_of(faults.begin(), faults.end(),
                     [&](const Fault& fault) { return fault.kind == kind; });
}

TEST_CASE("a door made right by hand has no fault", "[wood]") {
  for (const Fault& fault : judge(small_door()))
    FAIL_CHECK(fault.what);
}

TEST_CASE("a panel one step too wide is found", "[wood]") {
  Assembly door = small_door();
  marked(door, "E").blank[1] += kStep;
  CHECK(finds(door, FaultKind::clearance));
}

TEST_CASE("a panel one step too thick is found", "[wood]") {
  Assembly door = small_door();
  marked(door, "E").blank[2] += kStep;
  CHECK(finds(door, FaultKind::clearance));
}

TEST_CASE("a tenon one step too deep is found", "[wood]") {
  Assembly door = small_door();
  Piece& rail = marked(door, "C");
  rail.blank[0] += kStep;
  for (Feature& each : rail.features) {
    for (Box& cut : each.cuts) {
      if (cut.high[0] == mm(340)) cut.high[0] += kStep;
    }
  }
  CHECK(finds(door, FaultKind::clearance));
  CHECK(finds(door, FaultKind::tenon_sizes));
  CHECK_FALSE(finds(door, FaultKind::shoulder));
}

TEST_CASE("a rail one step to the right is found by its shoulders and in shared wood", "[wood]") {
  Assembly door = small_door();
  marked(door, "C").place.origin[0] += kStep;
  CHECK(finds(door, FaultKind::shoulder));
  CHECK(finds(door, FaultKind::shared_wood));
}

TEST_CASE("a rail one step too high is found", "[wood]") {
  Assembly door = small_door();
  marked(door, "C").place.origin[1] += kStep;
  CHECK(finds(door, FaultKind::clearance));
  CHECK(finds(door, FaultKind::extent));
}

TEST_CASE("a rail one step too thick or thin on its face is found", "[wood]") {
  Assembly door = small_door();
  marked(door, "D").blank[2] += kStep;
  CHECK(finds(door, FaultKind::extent));
}

TEST_CASE("a tenon that is off the middle of its mortise by two steps is found", "[wood]") {
  Assembly door = small_door();
  for (Box& cut : feature(marked(door, "C"), "tenon").cuts) {
    if (cut.high[2] == mm(7.1)) cut.high[2] += kStep;
    if (cut.low[2] == mm(12.9)) cut.low[2] += kStep;
  }
  CHECK(finds(door, FaultKind::clearance));
}

TEST_CASE("a missing groove is found", "[wood]") {
  Assembly door = small_door();
  marked(door, "A").features.erase(marked(door, "A").features.begin());
  CHECK(finds(door, FaultKind::shared_wood));
}

TEST_CASE("a mortise one step too short at one end is found", "[wood]") {
  Assembly door = small_door();
  feature(marked(door, "B"), "mortise").cuts[0].low[0] += kStep;
  CHECK(finds(door, FaultKind::clearance));
  CHECK(finds(door, FaultKind::tenon_sizes));
}

TEST_CASE("a haunch that stands on the bottom of the groove, or beyond, is found", "[wood]") {
  Assembly door = small_door();
  feature(marked(door, "C"), "tenon").cuts[3].high[0] = mm(21) - kStep;
  CHECK(finds(door, FaultKind::haunch));
  CHECK(finds(door, FaultKind::shared_wood));
}

TEST_CASE("a haunch left off is found", "[wood]") {
  Assembly door = small_door();
  feature(marked(door, "C"), "tenon").cuts[3].high[0] = mm(30);
  CHECK(finds(door, FaultKind::haunch));
}

TEST_CASE("a hole in the face is found, the size of one step", "[wood]") {
  Assembly door = small_door();
  const Triple low{mm(200), mm(100), Length()};
  const Box hole{low, {low[0] + kStep, low[1] + kStep, mm(5.6)}};
  marked(door, "E").features.push_back({FeatureKind::bore, {}, {hole}, {}});
  CHECK(finds(door, FaultKind::hole));
}

TEST_CASE("a cut outside its blank is found", "[wood]") {
  Assembly door = small_door();
  feature(marked(door, "A"), "groove").cuts[0].high[1] += kStep;
  CHECK(finds(door, FaultKind::cut_outside_blank));
}

TEST_CASE("a panel in three grooves is found", "[wood]") {
  Assembly door = small_door();
  door.joints.pop_back();
  CHECK(finds(door, FaultKind::panel_edges));
}

TEST_CASE("a groove that names a mortise-and-tenon, or not its panel, is found", "[wood]") {
  Assembly door = small_door();
  auto& joints = feature(marked(door, "A"), "groove").joints;
  joints.push_back(0);
  CHECK(finds(door, FaultKind::role));
  joints.clear();
  CHECK(finds(door, FaultKind::role));
}

TEST_CASE("a stile that enters a rail is found", "[wood]") {
  Assembly door = small_door();
  std::swap(door.joints[0].receives, door.joints[0].enters);
  CHECK(finds(door, FaultKind::role));
}

TEST_CASE("a mortise right through its stile has no bottom, which the spec asked for", "[wood]") {
  Assembly door = small_door();
  feature(marked(door, "A"), "mortise").cuts[0].low[1] = Length();
  CHECK(finds(door, FaultKind::broken));
  for (const Fault& fault : judge(door)) {
    INFO(fault.what);
    CHECK(asked_for(fault.kind));
  }
}

TEST_CASE("a leaf that does not leave the clearances of its opening is found", "[wood]") {
  Assembly door = small_door();
  door.fits = {Fit{StandsIn::opening, 0, 0, mm(406), mm(606), {mm(3), mm(3), mm(3), mm(3)}}};
  CHECK_FALSE(finds(door, FaultKind::extent));
  door.fits.front().room.left += kStep;
  CHECK(finds(door, FaultKind::extent));
}

TEST_CASE("wood is the same however its cuts are written", "[wood]") {
  Assembly door = small_door();
  const auto before = wood_of(door);
  Feature& groove = feature(marked(door, "A"), "groove");
  Box upper = groove.cuts[0];
  groove.cuts[0].high[0] = mm(333);
  upper.low[0] = mm(222);
  groove.cuts.push_back(upper);
  CHECK(wood_of(door) == before);
  groove.cuts[1].high[0] -= kStep;
  CHECK(wood_of(door) != before);
}

}  // namespace

}  // namespace haunch::test
