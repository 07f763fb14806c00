// Fits by tolerance: worked by hand, against a simulation, and by what must always hold.
#include "tolerance.h"

#include <cstdint>
#include <numbers>

#include "corner.h"

namespace haunch::test {
namespace {

using Catch::Matchers::WithinAbs;
using D = Dimension;

Tolerance& of(Tolerances& tolerances, Dimension dimension) {
  return tolerances.each[static_cast<std::size_t>(dimension)];
}

/// Everything to one plus/minus, each size by itself or all at one setting.
Tolerances all_to(double plus_minus, bool one_setting) {
  Tolerances tolerances;
  tolerances.each.fill({mm(plus_minus), one_setting});
  tolerances.fit = {mm(0), mm(0.25)};
  return tolerances;
}

/// A tenon to 0.09 and a mortise to 0.12: together 0.15, or 0.05 for one standard deviation.
Tolerances three_four_five() {
  Tolerances tolerances = all_to(0, false);
  of(tolerances, D::tenon_thickness).plus_minus = mm(0.09);
  of(tolerances, D::mortise_width).plus_minus = mm(0.12);
  return tolerances;
}

/// So many tenons in mortises, all designed with one play, and nothing else.
Assembly tenons_only(double play, std::size_t count) {
  Assembly assembly;
  assembly.pieces.resize(2);
  Joint joint;
  joint.kind = "mortise-and-tenon";
  joint.enters = 1;
  joint.design.cheeks = mm(play);
  joint.tenon.emplace();
  joint.mortise.emplace();
  assembly.joints.assign(count, joint);
  return assembly;
}

JointFit only_joint(double play, const Tolerances& tolerances) {
  return forecast_fits(tenons_only(play, 1), tolerances, Unit::mm).joints.at(0);
}

double in_mm(Length length) {
  return static_cast<double>(length.steps()) / static_cast<double>(Length::kStepsPerMm);
}

double share_of(const Assembly& assembly, const Tolerances& tolerances) {
  return leaf_share(assembly, tolerances, Unit::mm, {});
}

LeafFit leaf_of(const Assembly& assembly, const Tolerances& tolerances) {
  return forecast_fits(assembly, tolerances, Unit::mm).leaf;
}

/// The side door: 10 tenons in mortises, 16 panel edges.
Assembly mortised_door() {
  return wood(house_mm(R"("panels": 4, "stile_width": 118)"));
}

/// A cabinet door with its rails and muntins stubbed in the groove: 6 stubs, 8 panel edges.
Assembly stubbed_door(std::string_view panel_allowance = "0.4") {
  return wood(cabinet_mm(R"("tenon_depth": 9, "panels": 2, "panel": {"allowance": )" +
                         std::string(panel_allowance) + "}"));
}

// ---- a shop that cuts leaf after leaf

/// Marsaglia's xorshift, seeded, so that each run cuts the same leaves.
class Dice {
 public:
  explicit Dice(std::uint64_t seed) : state_(seed) {}

  /// Normal, after Box and Muller.
  double normal() {
    const double radius = std::sqrt(-2 * std::log(uniform()));
    return radius * std::cos(2 * std::numbers::pi * uniform());
  }

 private:
  /// Above 0, to 1.
  double uniform() {
    state_ ^= state_ << 13U;
    state_ ^= state_ >> 7U;
    state_ ^= state_ << 17U;
    return (static_cast<double>(state_ >> 11U) + 1) / 9007199254740992.0;
  }

  std::uint64_t state_;
};

class Shop {
 public:
  Shop(const Tolerances& tolerances, std::uint64_t seed) : tolerances_(tolerances), dice_(seed) {
    set_up();
  }

  /// Sets every machine anew.
  void set_up() {
    for (double& setting : settings_)
      setting = dice_.normal();
  }

  /// By how much one size comes out wrong, in mm.
  double error(Dimension dimension) {
    const Tolerance& its = tolerances_.of(dimension);
    const double part = its.one_setting ? tolerances_.setting_share / 100.0 : 0;
    const double deviation = in_mm(its.plus_minus) / tolerances_.deviations;
    return deviation * (std::sqrt(part) * settings_[static_cast<std::size_t>(dimension)] +
                        std::sqrt(1 - part) * dice_.normal());
  }

  bool goes_together(const Assembly& leaf) {
    set_up();
    bool all = true;
    for (const Joint& joint : leaf.joints) {
      const bool panel = joint.design.bite.has_value();
      const Dimension hollow = joint.mortise ? D::mortise_width : D::groove_width;
      const double play = in_mm(*joint.design.cheeks) + error(hollow) -
                          error(panel ? D::panel_tongue : D::tenon_thickness);
      const double least = panel ? 0 : in_mm(tolerances_.fit.min);
      const double most = panel ? 0.8 : in_mm(tolerances_.fit.max);
      all = all && least <= play && play <= most;
    }
    return all;
  }

 private:
  const Tolerances& tolerances_;
  Dice dice_;
  std::array<double, kDimensions> settings_{};
};

constexpr int kLeaves = 200'000;

/// The share found by cutting, less the share foretold, in standard errors of the cutting.
double off_by(const Assembly& leaf, const Tolerances& tolerances, std::uint64_t seed) {
  Shop shop(tolerances, seed);
  int good = 0;
  for (int i = 0; i < kLeaves; ++i)
    good += shop.goes_together(leaf) ? 1 : 0;
  const double foretold = share_of(leaf, tolerances);
  const double error = std::sqrt(foretold * (1 - foretold) / kLeaves);
  CAPTURE(foretold, good);
  // A share that cutting could not tell from 0 or 1 tests nothing.
  REQUIRE(foretold > 0.01);
  REQUIRE(foretold < 0.99);
  return std::abs(static_cast<double>(good) / kLeaves - foretold) / error;
}

}  // namespace

// ---- by hand

TEST_CASE("Shares of the normal distribution are those of its printed table") {
  const auto share_within = [](double low, double high) { return normal_share(low, high, 0, 1); };
  CHECK_THAT(share_within(-1, 1), WithinAbs(0.6827, 5e-5));
  CHECK_THAT(share_within(-2, 2), WithinAbs(0.9545, 5e-5));
  CHECK_THAT(share_within(-3, 3), WithinAbs(0.9973, 5e-5));
  CHECK_THAT(share_within(0, 1.96), WithinAbs(0.4750, 5e-5));
  CHECK_THAT(share_within(-100, 0.5), WithinAbs(0.6915, 5e-5));
  CHECK_THAT(normal_share(9, 12, 10, 2), WithinAbs(0.5328, 5e-5));  // -0.5 to 1
  // Far out on either side, where whole shares would leave nothing to subtract.
  CHECK_THAT(share_within(9, 100) / 1.1286e-19, WithinAbs(1, 1e-4));
  CHECK_THAT(share_within(-100, -9) / 1.1286e-19, WithinAbs(1, 1e-4));
}

TEST_CASE("One joint: 0.15 of play, a tenon to 0.09 and a mortise to 0.12") {
  Tolerances tolerances = three_four_five();
  tolerances.fit = {mm(0.1), mm(0.25)};
  const JointFit fit = only_joint(0.15, tolerances);
  CHECK(fit.play.nominal == mm(0.15));
  CHECK(fit.play.worst_min == mm(-0.06));  // 0.15 - 0.21
  CHECK(fit.play.worst_max == mm(0.36));
  CHECK(fit.play.rss_min == mm(0));  // 0.15 - sqrt(0.09 x 0.09 + 0.12 x 0.12)
  CHECK(fit.play.rss_max == mm(0.3));
  // From one standard deviation of 0.05 below to two above: 0.9772 - 0.1587.
  CHECK_THAT(fit.share, WithinAbs(0.8186, 5e-5));
}

TEST_CASE("A plus/minus may stand for another number of standard deviations") {
  Tolerances tolerances = three_four_five();
  tolerances.fit = {mm(0), mm(0.3)};
  CHECK_THAT(only_joint(0.15, tolerances).share, WithinAbs(0.9973, 5e-5));
  tolerances.deviations = 2;
  CHECK_THAT(only_joint(0.15, tolerances).share, WithinAbs(0.9545, 5e-5));
  tolerances.deviations = 1;
  CHECK_THAT(only_joint(0.15, tolerances).share, WithinAbs(0.6827, 5e-5));
}

TEST_CASE("A stub is fitted to its groove, a panel's edge as well, but within its own band") {
  Tolerances tolerances = all_to(0, false);
  of(tolerances, D::groove_width).plus_minus = mm(0.08);
  of(tolerances, D::tenon_thickness).plus_minus = mm(0.06);
  of(tolerances, D::panel_tongue).plus_minus = mm(0.15);
  const FitForecast forecast = forecast_fits(corner(), tolerances, Unit::mm);
  REQUIRE(forecast.joints.size() == 5);
  const JointFit& tenon = forecast.joints[kTenon];
  CHECK(tenon.play.rss_max == mm(0.26));  // 0.2 + 0.06: the mortise is exact
  CHECK(tenon.band.max == mm(0.25));
  CHECK(forecast.joints[kStub].play.rss_max == mm(0.3));       // 0.2 + 0.1
  CHECK(forecast.joints[kPanelTop].play.rss_max == mm(0.57));  // 0.4 + 0.17
  CHECK(forecast.joints[kPanelTop].band.min == mm(0));
  CHECK(forecast.joints[kPanelTop].band.max == mm(0.8));
  const FitForecast inches = forecast_fits(corner(), tolerances, Unit::inch);
  CHECK(inches.joints[kPanelTop].band.max == Length::from_inch_parts(1, 32));
}

TEST_CASE("Of two joints that share nothing, both are good as often as the product says") {
  const Tolerances tolerances = three_four_five();
  const double one = only_joint(0.2, tolerances).share;
  CHECK_THAT(share_of(tenons_only(0.2, 2), tolerances), WithinAbs(one * one, 1e-14));
  CHECK_THAT(share_of(tenons_only(0.2, 7), tolerances), WithinAbs(std::pow(one, 7), 1e-14));
}

TEST_CASE("A leaf with a single joint is good as often as the joint, whoever shares a setting") {
  for (const int part : {0, 10, 50, 90}) {
    for (const double play : {0.0, 0.05, 0.15, 0.3}) {
      Tolerances tolerances = three_four_five();
      tolerances.setting_share = part;
      of(tolerances, D::tenon_thickness).one_setting = true;
      of(tolerances, D::mortise_width).one_setting = true;
      CHECK_THAT(share_of(tenons_only(play, 1), tolerances),
                 WithinAbs(only_joint(play, tolerances).share, 1e-11));
    }
  }
}

TEST_CASE("Joints that share an error are good or bad together") {
  Tolerances tolerances = three_four_five();
  const double one = only_joint(0.2, tolerances).share;
  double before = share_of(tenons_only(0.2, 10), tolerances);
  of(tolerances, D::tenon_thickness).one_setting = true;
  of(tolerances, D::mortise_width).one_setting = true;
  for (const int part : {20, 40, 60, 80, 90}) {
    tolerances.setting_share = part;
    const double share = share_of(tenons_only(0.2, 10), tolerances);
    CHECK(share > before);
    CHECK(share < one);
    before = share;
  }
}

// ---- against cutting

TEST_CASE("Shares of leaves agree with two hundred thousand leaves cut") {
  const Assembly mortised = mortised_door();
  const Assembly stubbed = stubbed_door();
  CHECK(off_by(mortised, all_to(0.1, true), 11) < 4);
  CHECK(off_by(mortised, all_to(0.1, false), 12) < 4);
  CHECK(off_by(stubbed, all_to(0.12, true), 13) < 4);
  CHECK(off_by(stubbed, all_to(0.1, false), 14) < 4);
  // Panels with little play, so that groove errors that suit the stubs do not suit them.
  CHECK(off_by(stubbed_door("0.05"), all_to(0.1, true), 15) < 4);
  // Tenons of one thickness both in mortises and in grooves.
  CHECK(off_by(corner(), all_to(0.15, true), 16) < 4);
  Tolerances tolerances = all_to(0.12, true);
  tolerances.setting_share = 90;
  tolerances.deviations = 2;
  CHECK(off_by(mortised, tolerances, 17) < 4);
  CHECK(off_by(corner(), tolerances, 18) < 4);
  of(tolerances, D::groove_width).one_setting = false;
  of(tolerances, D::tenon_thickness).plus_minus = mm(0.01);
  CHECK(off_by(stubbed, tolerances, 19) < 4);
}

TEST_CASE("Stubs that are thinner than the tenons are cut at a setting of their own") {
  const Assembly same = corner();
  const Assembly apart = corner_but([](Assembly& a) { a.joints[kStub].tenon->thickness = mm(5); });
  Tolerances tolerances = all_to(0, true);
  of(tolerances, D::tenon_thickness).plus_minus = mm(0.15);
  const double tenon = share_of(tenons_only(0.2, 1), tolerances);
  CHECK_THAT(share_of(apart, tolerances), WithinAbs(tenon * tenon, 1e-11));
  CHECK(share_of(same, tolerances) > tenon * tenon + 0.01);
}

TEST_CASE("The width's root-sum-square is what leaves come out to") {
  const Tolerances tolerances = all_to(0.25, true);
  Shop shop(tolerances, 20);
  double square = 0;
  for (int i = 0; i < kLeaves; ++i) {
    shop.set_up();
    const double error =
        shop.error(D::piece_width) + shop.error(D::shoulder_length) + shop.error(D::piece_width);
    square += error * error;
  }
  const Spread width = forecast_fits(mortised_door(), tolerances, Unit::mm).width.size;
  const double found = 3 * std::sqrt(square / kLeaves);
  const double foretold = in_mm(width.rss_max - width.nominal);
  // The standard error of a deviation is a 1/sqrt(2n)th of it.
  CHECK(std::abs(found / foretold - 1) < 4 / std::sqrt(2.0 * kLeaves));
}

// ---- what always holds

TEST_CASE("Without any tolerance, all leaves go together or none do") {
  const Tolerances exact = all_to(0, true);
  const Assembly leaf = mortised_door();
  const auto share = [&](Length allowance) { return leaf_share(leaf, exact, Unit::mm, allowance); };
  CHECK(share(mm(0)) == 1);
  CHECK(share(mm(0.1)) == 1);
  CHECK(share(mm(0.25)) == 1);
  CHECK(share(mm(0.25) + kStep) == 0);
  const LeafFit fit = leaf_of(leaf, exact);
  CHECK(fit.share == 1);
  CHECK(fit.best_share == 1);
  CHECK(fit.best_allowance == mm(0.125));
  CHECK(fit.least_allowance == mm(0));
  CHECK(leaf_of(stubbed_door("0.9"), exact).share == 0);
  CHECK(leaf_of(stubbed_door("0.9"), exact).best_allowance == std::nullopt);
}

TEST_CASE("A wider tolerance never lets more leaves go together at their best allowance") {
  const Assembly leaves[] = {mortised_door(), stubbed_door(), corner()};
  for (const Assembly& leaf : leaves) {
    for (const D dimension : {D::tenon_thickness, D::mortise_width, D::groove_width,
                              D::panel_tongue, D::shoulder_length, D::piece_width}) {
      double before = 1;
      for (const double plus_minus : {0.0, 0.02, 0.05, 0.1, 0.2, 0.4}) {
        Tolerances tolerances = all_to(0.1, true);
        of(tolerances, dimension).plus_minus = mm(plus_minus);
        const double best = leaf_of(leaf, tolerances).best_share;
        CHECK(best <= before + 1e-12);
        before = best;
      }
    }
  }
}

TEST_CASE("No allowance beside the best one is better") {
  const Assembly leaves[] = {mortised_door(), stubbed_door(), stubbed_door("0.05"),
                             stubbed_door("0.75"), corner()};
  for (const Assembly& leaf : leaves) {
    for (const double plus_minus : {0.05, 0.1, 0.2}) {
      const Tolerances tolerances = all_to(plus_minus, true);
      const LeafFit fit = leaf_of(leaf, tolerances);
      REQUIRE(fit.best_allowance);
      const auto share = [&](Length allowance) {
        return leaf_share(leaf, tolerances, Unit::mm, allowance);
      };
      CHECK(share(*fit.best_allowance) == fit.best_share);
      for (const double away : {0.001, 0.002, 0.005, 0.02, 0.05, 0.1}) {
        CHECK(share(*fit.best_allowance + mm(away)) <= fit.best_share * (1 + 1e-11));
        CHECK(share(*fit.best_allowance - mm(away)) <= fit.best_share * (1 + 1e-11));
      }
    }
  }
}

TEST_CASE("Where panels need a wide groove, stubs are best a little thicker") {
  // Grooves that come out too narrow pinch the panels, so of the leaves that are good the grooves
  // are rather too wide: a smaller allowance makes up for it.
  const Tolerances tolerances = all_to(0.15, true);
  CHECK(leaf_of(stubbed_door(), tolerances).best_allowance == mm(0.125));
  CHECK(*leaf_of(stubbed_door("0.02"), tolerances).best_allowance < mm(0.125));
}

TEST_CASE("The least allowance is just enough for the wanted share") {
  Tolerances tolerances = all_to(0.08, true);
  for (const int wanted : {1, 50, 80, 95}) {
    tolerances.wanted_share = wanted;
    for (const Assembly& leaf : {mortised_door(), corner()}) {
      const LeafFit fit = leaf_of(leaf, tolerances);
      REQUIRE(fit.least_allowance);
      CHECK(leaf_share(leaf, tolerances, Unit::mm, fit.least_allowance) >= wanted / 100.0);
      if (*fit.least_allowance >= mm(0.001))
        CHECK(leaf_share(leaf, tolerances, Unit::mm, *fit.least_allowance - mm(0.001)) <
              wanted / 100.0);
    }
  }
  tolerances = all_to(0.3, true);
  CHECK(leaf_of(mortised_door(), tolerances).best_share < 0.95);
  CHECK(leaf_of(mortised_door(), tolerances).least_allowance == std::nullopt);
}

// ---- stacks

TEST_CASE("A leaf's width is two stiles and a rail between its shoulders") {
  Tolerances tolerances = all_to(0, false);
  of(tolerances, D::piece_width).plus_minus = mm(0.3);
  of(tolerances, D::shoulder_length).plus_minus = mm(0.4);
  const Assembly leaf = mortised_door();
  const Stack width = forecast_fits(leaf, tolerances, Unit::mm).width;
  REQUIRE(width.pieces.size() == 3);
  CHECK(leaf.pieces[width.pieces[0]].name == "left stile");
  CHECK(leaf.pieces[width.pieces[1]].role == "rail");
  CHECK(leaf.pieces[width.pieces[2]].name == "right stile");
  CHECK(width.size.nominal == leaf.size[0]);
  CHECK(width.size.worst_min == leaf.size[0] - mm(1));
  CHECK(width.size.worst_max == leaf.size[0] + mm(1));
  // sqrt(0.09 + 0.16 + 0.09)
  CHECK_THAT(in_mm(width.size.rss_max - leaf.size[0]), WithinAbs(0.583095, 1e-6));
}

TEST_CASE(
    "Two stiles planed at one setting are off the same way, two of different widths are not") {
  Tolerances tolerances = all_to(0.25, true);
  const auto off = [&](const Assembly& leaf) {
    return forecast_fits(leaf, tolerances, Unit::mm).width.size.rss_max - leaf.size[0];
  };
  // Half of the variance is the setting's: 0.5 x (2 x 0.25)^2 + 0.5 x 2 x 0.25^2 of the stiles and
  // 0.25^2 of the rail make 0.5^2.
  CHECK(off(mortised_door()) == mm(0.5));
  // sqrt(3) x 0.25
  const Length apart = off(wood(house_mm(R"("stile_width": {"left": 118, "right": 100})")));
  CHECK_THAT(in_mm(apart), WithinAbs(0.433013, 1e-6));
}

TEST_CASE("A leaf's height is its rails and muntins where they go all the way, else a stile") {
  const Tolerances tolerances = all_to(0.1, false);
  const Assembly leaf = mortised_door();
  const Stack height = forecast_fits(leaf, tolerances, Unit::mm).height;
  CHECK(height.pieces.size() == 5);
  CHECK(leaf.pieces[height.pieces.front()].name == "bottom rail");
  CHECK(height.size.nominal == leaf.size[1]);
  CHECK(height.size.worst_max == leaf.size[1] + mm(0.5));
  for (const std::string across : {"1", "[1, 2]", "[2, 1]"}) {
    const Assembly open = wood(house_mm(R"("panels": {"across": )" + across + "}"));
    const Stack alone = forecast_fits(open, tolerances, Unit::mm).height;
    REQUIRE(alone.pieces.size() == 1);
    CHECK(open.pieces[alone.pieces[0]].role == "stile");
    CHECK(alone.size.nominal == open.size[1]);
    CHECK(alone.size.worst_max == open.size[1] + mm(0.1));
  }
}

TEST_CASE(
    "A rail stands proud by what its mortise is off its place, and half of what both are off") {
  Tolerances tolerances = all_to(0, false);
  of(tolerances, D::mortise_place).plus_minus = mm(0.2);
  of(tolerances, D::mortise_width).plus_minus = mm(0.2);
  of(tolerances, D::tenon_thickness).plus_minus = mm(0.1);
  const auto flush = forecast_fits(mortised_door(), tolerances, Unit::mm).flush;
  REQUIRE(flush);
  CHECK(flush->nominal == mm(0));
  CHECK(flush->worst_min == mm(-0.35));
  CHECK(flush->worst_max == mm(0.35));
  // sqrt(0.04 + 0.01 + 0.0025)
  CHECK_THAT(in_mm(flush->rss_max), WithinAbs(0.229129, 1e-6));
  CHECK_FALSE(forecast_fits(stubbed_door(), tolerances, Unit::mm).flush);
}

}  // namespace haunch::test
