// Trial cuts: what readings mean, and that moving a machine as told puts it right.
#include "trial.h"

#include <array>
#include <cmath>
#include <random>

#include "panel_trial.h"
#include "vocabulary.h"

namespace haunch::test {
namespace {

std::vector<Length> each_mm(const std::vector<double>& sizes) {
  std::vector<Length> lengths;
  for (const double size : sizes)
    lengths.push_back(mm(size));
  return lengths;
}

std::optional<Readings> read(const std::vector<double>& sizes) {
  return sum_up(each_mm(sizes));
}

/// Whether two figures agree to so great a part of them.
bool near(double a, double b, double part) {
  return std::abs(a - b) <= part * std::abs(b);
}

/// A joint of 44 mm stock: a mortise of 15 in the middle, its tenon with 0.15 of fit.
JointDesign design_44() {
  return {false,
          "rail",
          "stile",
          {mm(44), mm(14.575), mm(14.85), mm(70)},
          {mm(44), mm(14.5), mm(15), mm(72)}};
}

JointReadings nothing_read() {
  JointReadings readings;
  readings.band = usual_band(Unit::mm);
  readings.caliper_error = usual_caliper_error(Unit::mm);
  return readings;
}

const Correction* correction(const JointTrial& trial, Setting setting) {
  for (const Correction& each : trial.corrections)
    if (each.setting == setting) return &each;
  return nullptr;
}

std::optional<Length> move(const JointTrial& trial, Setting setting) {
  const Correction* found = correction(trial, setting);
  return found ? std::optional(found->move()) : std::nullopt;
}

/// How a trial with these readings across of tenon and mortise keeps its band.
Hold hold(const std::vector<double>& tenon, const std::vector<double>& mortise) {
  JointReadings readings = nothing_read();
  readings.tenon.across = read(tenon);
  readings.mortise.across = read(mortise);
  return try_joint(design_44(), readings).outlook.hold;
}

constexpr std::size_t kSettings = 5;

/// Machines whose scales are out: a setting of 10 cuts 10 and the error.
struct Machines {
  std::array<Length, kSettings> scale;  // what they are set to
  std::array<Length, kSettings> error;
  Length width;  // of the mortise cutter

  Length cut(Setting setting) const {
    const auto at = static_cast<std::size_t>(setting);
    return scale[at] + error[at];
  }
  /// Readings of a few cuts: one to either side of what the machine means, and one between.
  static std::optional<Readings> read_around(Length size, Length scatter) {
    return sum_up({size - scatter, size, size + scatter});
  }
  JointReadings readings(Length scatter) const {
    JointReadings readings = nothing_read();
    const Length face = cut(Setting::face_cheek);
    readings.tenon.from_face = read_around(face, scatter);
    readings.tenon.across = read_around(cut(Setting::back_cheek) - face, scatter);
    readings.tenon.depth = read_around(cut(Setting::tenon_depth), scatter);
    readings.mortise.from_face = read_around(cut(Setting::mortise_place), scatter);
    readings.mortise.across = read_around(width, scatter);
    readings.mortise.depth = read_around(cut(Setting::mortise_depth), scatter);
    return readings;
  }
  void correct(const JointTrial& trial) {
    for (const Correction& each : trial.corrections)
      scale[static_cast<std::size_t>(each.setting)] += each.move();
  }
};

/// Set as drawn, each scale out by up to half a millimetre.
Machines machines_out(std::mt19937& random, const JointDesign& design) {
  std::uniform_int_distribution<std::int64_t> half_mm(-800'000, 800'000);
  Machines machines;
  machines.scale = {design.tenon.from_face, design.tenon.from_face + design.tenon.across,
                    design.tenon.depth, design.mortise.from_face, design.mortise.depth};
  for (Length& error : machines.error)
    error = Length::from_steps(half_mm(random));
  machines.width = design.mortise.across + Length::from_steps(half_mm(random));
  return machines;
}

}  // namespace

TEST_CASE("Three readings 14.77, 14.79 and 14.75 have a mean of 14.77 and a spread of 0.02") {
  // Squares off the mean: 0 + 0.0004 + 0.0004; over 2: 0.0004; its root: 0.02.
  const Readings readings = *read({14.77, 14.79, 14.75});
  CHECK(readings.count == 3);
  CHECK(readings.mean == mm(14.77));
  CHECK(readings.spread == mm(0.02));
  // Student's t for 2 degrees of freedom is 2.9200; over the root of 3, 1.6859.
  CHECK(mean_within(readings) == Length::from_steps(std::llround(32'000 * 2.92 / std::sqrt(3.0))));
  // Chi-square for 2 degrees of freedom at a tenth is 0.21072: the root of 2/0.21072 is 3.0808.
  CHECK(spread_at_most(readings) == Length::from_steps(std::llround(32'000 * 3.08079)));
}

TEST_CASE("One reading shows no spread") {
  const Readings one = *read({14.9});
  CHECK_FALSE(one.spread.has_value());
  CHECK_FALSE(mean_within(one).has_value());
  CHECK_FALSE(spread_at_most(one).has_value());
}

TEST_CASE("A mean goes to the nearest step") {
  const auto steps = [](std::int64_t count) { return Length::from_steps(count); };
  CHECK(sum_up({steps(10), steps(10), steps(11)}).mean == steps(10));
  CHECK(sum_up({steps(10), steps(11), steps(11)}).mean == steps(11));
  CHECK(sum_up({steps(10), steps(11)}).mean == steps(11));
}

TEST_CASE("How sure few readings make is as the printed tables have it") {
  const auto t = [](std::size_t count) {
    return mean_factor(count) * std::sqrt(static_cast<double>(count));
  };
  const auto chi_square = [](std::size_t count) {
    return static_cast<double>(count - 1) / std::pow(spread_factor(count), 2);
  };
  CHECK(near(t(2), 6.314, 0.0005));
  CHECK(near(t(5), 2.132, 0.0005));
  CHECK(near(t(16), 1.753, 0.0005));
  CHECK(near(t(31), 1.697, 0.0005));
  CHECK(near(chi_square(2), 0.0158, 0.005));
  CHECK(near(chi_square(5), 1.064, 0.001));
  CHECK(near(chi_square(16), 8.547, 0.001));
  CHECK(near(chi_square(31), 20.599, 0.001));
}

TEST_CASE("More readings make surer") {
  for (std::size_t count = 2; count < 200; ++count) {
    CHECK(mean_factor(count + 1) < mean_factor(count));
    CHECK(spread_factor(count + 1) < spread_factor(count));
    CHECK(spread_factor(count) > 1);
  }
}

TEST_CASE("A trial worked by hand: the mortise too near the face, the tenon thin") {
  // Mortise 15.02 wide, 14.4 from the face: its middle should be at 22, so its wall at
  // 22 - 7.51 = 14.49, 0.09 further back. The tenon for it: 15.02 - 0.15 = 14.87, from
  // 22 - 7.435 = 14.565 to 29.435. It was cut from 14.64 to 14.64 + 14.77 = 29.41.
  JointReadings readings = nothing_read();
  readings.tenon = {
      read({44}), read({14.62, 14.66, 14.64}), read({14.77, 14.79, 14.75}), {}, read({70.4})};
  readings.mortise = {
      read({44.1}), read({14.4, 14.42, 14.38}), read({15.02, 15.04, 15}), {}, read({71.8})};
  const JointTrial trial = try_joint(design_44(), readings);
  CHECK(contradictions(readings).empty());
  CHECK(trial.fit == mm(0.25));
  CHECK(trial.bottom == mm(1.4));
  CHECK(trial.tenon_wanted == mm(14.87));
  CHECK(trial.too_thick() == mm(-0.1));
  CHECK(move(trial, Setting::face_cheek) == mm(-0.075));
  CHECK(move(trial, Setting::back_cheek) == mm(0.025));
  CHECK(move(trial, Setting::tenon_depth) == mm(-0.4));
  CHECK(move(trial, Setting::mortise_place) == mm(0.09));
  CHECK(move(trial, Setting::mortise_depth) == mm(0.2));
  // Tenon's middle 22.025 behind its face, mortise's 21.91: the rail stands 0.115 out at the face,
  // and at the back 44 - 44.1 - 0.115. Half the fit, 0.125, either way.
  REQUIRE(trial.flush.has_value());
  CHECK(trial.flush->face == mm(0.115));
  CHECK(trial.flush->face_least == mm(-0.01));
  CHECK(trial.flush->face_most == mm(0.24));
  CHECK(trial.flush->back == mm(-0.215));
  CHECK(trial.after.face == Length());
  CHECK(trial.after.back == mm(-0.1));
  // A move of 0.025 is less than the calipers are true to.
  CHECK(correction(trial, Setting::back_cheek)->in_doubt);
  CHECK_FALSE(correction(trial, Setting::mortise_place)->in_doubt);
}

TEST_CASE("A move within what scattered readings can tell is in doubt, calipers however fine") {
  JointReadings readings = nothing_read();
  readings.caliper_error = Length();
  readings.tenon.from_face = read({14.6, 14.7, 14.8});  // 14.7 +- 0.169, 0.125 off
  CHECK(correction(try_joint(design_44(), readings), Setting::face_cheek)->in_doubt);
  readings.tenon.from_face = read({14.69, 14.7, 14.71});
  CHECK_FALSE(correction(try_joint(design_44(), readings), Setting::face_cheek)->in_doubt);
}

TEST_CASE("A machine set as told cuts the wanted fit to the step, whatever its scales are out by") {
  std::mt19937 random(20);
  JointDesign design = design_44();
  for (int run = 0; run < 2000; ++run) {
    design.tenon.across = mm(15) - Length::from_steps(run * 100);  // odd halves too
    design.tenon.from_face = design.mortise.from_face + floor_half(design.fit());
    Machines machines = machines_out(random, design);
    const Length scatter = Length::from_steps(run);
    machines.correct(try_joint(design, machines.readings(scatter)));
    const JointReadings again = machines.readings(scatter);
    const JointTrial right = try_joint(design, again);
    CHECK(right.fit == design.fit());
    CHECK(right.bottom == mm(2));
    CHECK(again.tenon.depth->mean == design.tenon.depth);
    for (const Correction& each : right.corrections)
      CHECK(each.move() == Length());
    // The middles meet to half a step, and the step is all that there is.
    CHECK(right.flush->face <= Length());
    CHECK(right.flush->face >= -kStep);
  }
}

TEST_CASE("The difference of a tenon is all a spacer's and half each cheek's") {
  JointReadings readings = nothing_read();
  readings.tenon.across = read({15.05});
  readings.mortise.across = read({15});
  const JointTrial trial = try_joint(design_44(), readings);
  CHECK(trial.fit == mm(-0.05));
  CHECK(trial.too_thick() == mm(0.2));
  CHECK(trial.corrections.empty());  // not known which cheek is off
  CHECK_FALSE(trial.flush.has_value());
}

TEST_CASE("What was not measured is as designed, and nothing is moved for it") {
  JointReadings readings = nothing_read();
  readings.mortise.across = read({15.1});
  const JointTrial trial = try_joint(design_44(), readings);
  CHECK(trial.tenon.across.source == Source::designed);
  CHECK(trial.fit == mm(0.25));
  CHECK(trial.tenon_wanted == mm(14.95));
  CHECK(trial.corrections.empty());
  CHECK_FALSE(trial.bottom.has_value());
}

TEST_CASE("Three parts of a thickness give the fourth") {
  const auto tenon_of = [](CheekReadings tenon) {
    JointReadings readings = nothing_read();
    readings.tenon = std::move(tenon);
    return try_joint(design_44(), readings).tenon;
  };
  CHECK(tenon_of({read({44}), {}, read({14.9}), read({14.5}), {}}).from_face.size == mm(14.6));
  CHECK(tenon_of({read({44}), read({14.6}), {}, read({14.5}), {}}).across.size == mm(14.9));
  CHECK(tenon_of({{}, read({14.6}), read({14.9}), read({14.5}), {}}).stock.size == mm(44));
  CHECK(tenon_of({read({44}), {}, read({14.9}), read({14.5}), {}}).from_face.source ==
        Source::added_up);
}

TEST_CASE("Parts that miss the whole by more than the calipers do contradict it") {
  const auto refused = [](CheekReadings tenon) {
    JointReadings readings = nothing_read();  // calipers true to 0.05
    readings.tenon = std::move(tenon);
    return contradictions(readings).size();
  };
  const auto all = [&](double from_back) {
    return refused({read({44}), read({14.6}), read({14.9}), read({from_back}), {}});
  };
  CHECK(all(14.5) == 0);
  CHECK(all(14.55) == 0);
  CHECK(all(14.551) == 1);
  CHECK(all(14.45) == 0);
  CHECK(all(14.449) == 1);
  // Without the back, parts may be less than the whole, but not more.
  CHECK(refused({read({44}), read({14.6}), read({14.9}), {}, {}}) == 0);
  CHECK(refused({read({44}), read({29.15}), read({14.9}), {}, {}}) == 0);
  CHECK(refused({read({44}), read({29.151}), read({14.9}), {}, {}}) == 1);
  CHECK(refused({read({44}), {}, read({44.051}), {}, {}}) == 1);
  CHECK(refused({{}, read({14.6}), read({14.9}), read({99}), {}}) == 0);
}

TEST_CASE("A mortise is held to its stile as a tenon to its rail") {
  JointReadings readings = nothing_read();
  readings.mortise = {read({44}), read({14.4}), read({15}), read({14.4}), {}};
  const auto found = contradictions(readings);
  REQUIRE(found.size() == 1);
  CHECK_FALSE(found.front().of_tenon);
  CHECK(found.front().sum() == mm(43.8));
  CHECK(found.front().stock == mm(44));
}

TEST_CASE("A reading 25.4 times out is a reading in the other unit") {
  CHECK(wrong_unit(mm(14.9 * 25.4), mm(14.85)) == WrongUnit::read_in_mm);
  CHECK(wrong_unit(mm(0.587), mm(14.85)) == WrongUnit::read_in_inches);
  CHECK(wrong_unit(mm(14.9), mm(14.85)) == WrongUnit::no);
  CHECK(wrong_unit(mm(149), mm(14.85)) == WrongUnit::no);
  CHECK(wrong_unit(mm(14.85 * 20), mm(14.85)) == WrongUnit::no);
  CHECK(wrong_unit(mm(14.85 * 32), mm(14.85)) == WrongUnit::no);
  CHECK(wrong_unit(Length(), mm(14.85)) == WrongUnit::no);
  CHECK(wrong_unit(mm(1), Length()) == WrongUnit::no);
}

TEST_CASE("Whether a band can be kept goes by three spreads either side of the fit") {
  // The band is 0 to 0.25, the fit 0.15: 0.1 of room, a sixth of the band is 0.0417.
  CHECK(hold({14.85}, {15, 15.01}) == Hold::unknown);
  CHECK(hold({14.849, 14.85, 14.851}, {14.999, 15, 15.001}) == Hold::keeps);
  CHECK(hold({14.83, 14.85, 14.87}, {14.98, 15, 15.02}) == Hold::unsure);          // spread 0.028
  CHECK(hold({14.825, 14.85, 14.875}, {14.975, 15, 15.025}) == Hold::off_centre);  // 0.035
  // 0.042 is more; but of so few readings it may be two thirds of that, and is told of from 0.064
  // on.
  CHECK(hold({14.82, 14.85, 14.88}, {14.97, 15, 15.03}) == Hold::unsure);
  CHECK(hold({14.805, 14.85, 14.895}, {14.955, 15, 15.045}) == Hold::cannot);
  CHECK(hold({14.7, 15}, {14.9, 15.1}) == Hold::unsure);  // two hardly show a spread
}

TEST_CASE("With many readings the same spread is sure enough") {
  JointReadings readings = nothing_read();
  readings.tenon.across = Readings{3, mm(14.85), mm(0.02)};
  readings.mortise.across = Readings{200, mm(15), mm(0.02)};
  CHECK(try_joint(design_44(), readings).outlook.hold == Hold::unsure);
  readings.tenon.across->count = 200;
  CHECK(try_joint(design_44(), readings).outlook.hold == Hold::keeps);
}

TEST_CASE("At three spreads of room either side 99.73 % of joints come out inside") {
  JointReadings readings = nothing_read();
  readings.band = {mm(0), mm(0.3)};
  readings.tenon.across = Readings{50, mm(14.85), mm(0.03)};
  readings.mortise.across = Readings{50, mm(15), mm(0.04)};
  const Outlook outlook = try_joint(design_44(), readings).outlook;
  CHECK(outlook.spread == mm(0.05));
  CHECK(near(*outlook.share, 0.9973, 0.0001));
}

TEST_CASE("A fit designed outside of the band gives way to the band's middle") {
  JointReadings readings = nothing_read();
  readings.band = {mm(0.02), mm(0.1)};
  CHECK(try_joint(design_44(), readings).outlook.wanted == mm(0.06));
  readings.band = {mm(0.02), mm(0.15)};
  CHECK(try_joint(design_44(), readings).outlook.wanted == mm(0.15));
}

TEST_CASE("Designs come from the wood: a tenon's mortise, a stub's groove, a panel's groove") {
  const Assembly leaf = wood(cabinet_mm(
      R"("thickness": 24, "mortise": {"width": 8}, "fit_allowance": 0.2, "groove_depth": 10,
         "tenon_depth": 40, "panel": {"allowance": 0.4})"));
  const auto tenon = joint_design(leaf, 0);
  REQUIRE(tenon.has_value());
  CHECK_FALSE(tenon->stub);
  CHECK(tenon->tenon_role == "rail");
  CHECK(tenon->mortise_role == "stile");
  CHECK(tenon->tenon.stock == mm(24));
  CHECK(tenon->tenon.from_face == mm(8.1));
  CHECK(tenon->fit() == mm(0.2));
  CHECK(tenon->mortise.stock == mm(24));
  CHECK(tenon->mortise.depth == mm(42));
  CHECK_FALSE(panel_design(leaf, 0).has_value());
  const std::size_t last = leaf.joints.size() - 1;
  CHECK_FALSE(joint_design(leaf, last).has_value());
  const auto panel = panel_design(leaf, last);
  REQUIRE(panel.has_value());
  CHECK(panel->groove == mm(8));
  CHECK(panel->tongue == mm(7.6));
  const auto stub = joint_design(wood(cabinet_mm(R"("thickness": 24, "mortise": {"width": 8},
                                      "fit_allowance": 0.2, "groove_depth": 10,
                                      "tenon_depth": 9)")),
                                 0);
  REQUIRE(stub.has_value());
  CHECK(stub->stub);
  CHECK(stub->fit() == mm(0.2));
  CHECK(stub->mortise.from_face == mm(8));
  CHECK(stub->mortise.depth == mm(10));
}

// ---- panels

namespace {

/// 300 wide; a tongue of 8 in a groove of 8.4.
PanelDesign panel_300() {
  return {mm(12), mm(300), mm(8), mm(8.4)};
}

PanelReadings after_first_face(const std::vector<PanelPoint>& remaining, double cup,
                               Face hollow = Face::first) {
  return {remaining, mm(cup), hollow, mm(2), usual_play(Unit::mm)};
}

PanelTrial trial_of(const PanelReadings& readings) {
  return try_panel(panel_300(), readings, Unit::mm);
}

}  // namespace

TEST_CASE("A flat, even panel comes out to size everywhere") {
  const PanelTrial trial = trial_of(after_first_face({{mm(10), {}}, {mm(10), mm(150)}}, 0));
  CHECK(trial.tongue.depth == mm(2));
  CHECK(trial.tongue.worst == Length());
  CHECK(trial.fits());
  CHECK(trial.advice == std::vector{PanelAdvice::go_on});
}

TEST_CASE("An uneven panel is worked to the middle of what its points ask for") {
  // 10.3 asks for 2.3, 10.1 for 2.1: at 2.2 both are 0.1 off.
  const PanelTrial trial = trial_of(after_first_face({{mm(10.3), {}}, {mm(10.1), {}}}, 0));
  CHECK(trial.tongue.depth == mm(2.2));
  CHECK(trial.tongue.thinnest == mm(7.9));
  CHECK(trial.tongue.thickest == mm(8.1));
  CHECK(trial.tongue.worst == mm(0.1));
  CHECK(trial.tongue.worst_point == 0);
  CHECK(trial.stock_varies == mm(0.2));
  CHECK(trial.fits());
}

TEST_CASE("Hollow on the first face the edges are lifted, hollow on the second the middle") {
  const std::vector<PanelPoint> points = {{mm(10), mm(0)}, {mm(10), mm(75)}, {mm(10), mm(150)}};
  // A parabola: at a quarter of the width a quarter of the cup at the edge.
  const PanelTrial round = trial_of(after_first_face(points, 0.4, Face::first));
  CHECK(round.tongue.thickest - round.tongue.thinnest == mm(0.4));
  CHECK(round.tongue.depth == mm(2.2));
  CHECK(round.tongue.worst_point == 0);
  CHECK(round.tongue.worst == mm(0.2));
  const PanelTrial hollow = trial_of(after_first_face(points, 0.4, Face::second));
  CHECK(hollow.tongue.depth == mm(2.2));
  CHECK(hollow.tongue.worst_point == 0);
  CHECK(hollow.tongue.worst == mm(-0.2));
  const PanelTrial quarter =
      trial_of(after_first_face({{mm(10), mm(75)}, {mm(10), mm(150)}}, 0.4, Face::first));
  CHECK(quarter.tongue.thickest - quarter.tongue.thinnest == mm(0.1));
}

TEST_CASE("No other depth leaves the worst point better") {
  std::mt19937 random(7);
  std::uniform_int_distribution<std::int64_t> thickness(9'500, 10'500), place(0, 300);
  for (int run = 0; run < 500; ++run) {
    std::vector<PanelPoint> points;
    for (int i = 0; i < 6; ++i)
      points.push_back(
          {Length::from_mm_thousandths(thickness(random)), Length::from_mm(place(random))});
    const PanelTongue best = best_depth(points, mm(0.3), Face::second, panel_300());
    const auto worst_at = [&](Length depth) {
      return std::max(best.thickest + best.depth - depth - mm(8),
                      mm(8) - (best.thinnest + best.depth - depth));
    };
    const Length least = worst_at(best.depth);
    CHECK(std::max(best.worst, -best.worst) == least);
    CHECK(worst_at(best.depth + kStep) >= least);
    CHECK(worst_at(best.depth - kStep) >= least);
  }
}

TEST_CASE("A panel that is only cupped is to rest, until the cup does no harm") {
  // Play 0 to 0.8 in a groove of 8.4: the tongue may be 7.6 to 8.4, so 0.4 off at most, which a cup
  // of 0.8 makes of an edge and a middle that are alike.
  const std::vector<PanelPoint> points = {{mm(10), {}}, {mm(10), mm(150)}};
  CHECK(trial_of(after_first_face(points, 0.8)).fits());
  const PanelTrial trial = trial_of(after_first_face(points, 1));
  CHECK_FALSE(trial.fits());
  CHECK(trial.advice.front() == PanelAdvice::let_rest);
  REQUIRE(trial.flat_enough.has_value());
  CHECK(*trial.flat_enough >= mm(0.8));
  CHECK(*trial.flat_enough <= mm(0.8) + kStep);
}

TEST_CASE("A panel too uneven even when flat takes its register from the first face") {
  const std::vector<PanelPoint> points = {{mm(10.9), {}}, {mm(10), {}}};
  CHECK(trial_of(after_first_face(points, 0)).advice.front() == PanelAdvice::register_on_first);
  CHECK(trial_of(after_first_face({{mm(10.8), {}}, {mm(10), {}}}, 0)).fits());
}

TEST_CASE("A panel cupped after much came off one face: the next in turn from both") {
  const auto advice = [](double removed, double cup) {
    PanelReadings readings = after_first_face({{mm(10), {}}}, cup);
    readings.removed = mm(removed);
    return trial_of(readings).advice;
  };
  CHECK(advice(1.5, 0.1) == std::vector{PanelAdvice::go_on});
  CHECK(advice(1.501, 0.1) == std::vector{PanelAdvice::alternate_faces});
  CHECK(advice(1.501, 0) == std::vector{PanelAdvice::go_on});
  // 2 come off the second face: 3.5 from the first is as unequal as may be.
  CHECK(advice(3.5, 0) == std::vector{PanelAdvice::go_on});
  CHECK(advice(3.501, 0) == std::vector{PanelAdvice::unequal_in_the_end});
}

TEST_CASE("A panel thinner than its tongue already is not worked again") {
  const PanelTrial trial = trial_of(after_first_face({{mm(7.5), {}}, {mm(7.7), {}}}, 0));
  CHECK(trial.tongue.depth == Length());
  CHECK(trial.tongue.worst == mm(-0.5));
  CHECK(trial.advice.front() == PanelAdvice::too_thin);
}

TEST_CASE("What came off the first face is reckoned from the design where it was not measured") {
  PanelReadings readings = after_first_face({{mm(10), {}}, {mm(10.2), {}}}, 0);
  readings.removed.reset();
  const PanelTrial trial = trial_of(readings);
  CHECK(trial.removed == mm(1.9));
  CHECK(trial.removed_is_designed);
}

}  // namespace haunch::test
