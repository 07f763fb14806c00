// Fits by tolerance: worked by hand, against a simulation, and by what must always hold.
#include "tolerance.h"

#include <cstdint>
#include <numbers>

#include "corner.h"
#include "tenon.h"

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
  joint.measures = kTenonMeasures;
  joint.enters = 1;
  joint.design.cheeks = mm(play);
  joint.tenon.emplace();
  joint.mortise.emplace();
  assembly.joints.assign(count, joint);
  return assembly;
}

/// So many loose tenons, each in a mortise of either of two pieces.
Assembly loose_tenons_only(double play, std::size_t count) {
  Assembly assembly = tenons_only(play, 0);
  for (std::size_t tenon = 0; tenon < count; ++tenon) {
    assembly.pieces.emplace_back().role = Role::loose_tenon;
    Joint joint = tenons_only(play, 1).joints.front();
    joint.measures = kLooseTenonMeasures;
    joint.has_shoulder = false;
    joint.enters = assembly.pieces.size() - 1;
    for (const std::size_t receives : {0U, 1U}) {
      joint.receives = receives;
      assembly.joints.push_back(joint);
    }
  }
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

/// The side door: 10 ends with tenons, those of lock and bottom rail divided in two, which makes 14
/// in as many mortises; 16 panel edges.
Assembly mortised_door() {
  return wood(house_mm(R"("panels": 4, "stile_width": 118)"));
}

/// A cabinet door with its rails and muntins stubbed in the groove: 6 stubs, 8 panel edges.
Assembly stubbed_door(std::string_view panel_allowance = "0.4") {
  return wood(cabinet_mm(R"("tenon_depth": 9, "panels": 2, "panel": {"allowance": )" +
                         std::string(panel_allowance) + "}"));
}

/// A door with twin tenons, divided in the lock and bottom rails: 2 x (2 + 4 + 4) in as many
/// mortises.
Assembly twinned_door() {
  return wood(house_mm(R"("thickness": 66, "panels": 2, "joint": "twin", "stile_width": 120,
      "rail_widths": [120, {"width": 200, "top": 965}, 240], "groove": {"width": 18})"));
}

/// Rails with loose tenons, muntins with tenons of their own.
Assembly loose_door(std::string_view more = R"("panels": 4)") {
  return wood(house_mm(R"("joint": {"corner": "loose", "middle": "loose"}, )" + std::string(more)));
}

/// Mitred corners with splines in slots that are cut with the panels' grooves.
Assembly mitred_door(std::string_view more) {
  return wood(cabinet_mm(R"("joint": {"corner": "mitre"}, )" + std::string(more)));
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

/// As docs/fits.md tells it: a size comes out as drawn, plus the error of its setting, plus a
/// scatter of its own.
class Shop {
 public:
  Shop(const Tolerances& tolerances, std::uint64_t seed) : tolerances_(tolerances), dice_(seed) {
    set_up();
  }

  /// Sets every machine anew.
  void set_up() {
    for (auto& settings : settings_)
      for (double& setting : settings)
        setting = dice_.normal();
  }

  /// What is set up apart for one dimension.
  enum SetUp : std::size_t { usual, for_thin_stubs, for_loose_tenons, for_splines, kSetUps };

  /// By how much one size comes out wrong, in mm.
  double error(Dimension dimension, SetUp set_up = usual) {
    const Tolerance& its = tolerances_.of(dimension);
    const double part = its.one_setting ? tolerances_.setting_share / 100.0 : 0;
    const double deviation = in_mm(its.plus_minus) / tolerances_.deviations;
    return deviation * (std::sqrt(part) * settings_[static_cast<std::size_t>(dimension)][set_up] +
                        std::sqrt(1 - part) * dice_.normal());
  }

  bool goes_together(const Assembly& leaf) {
    set_up();
    std::vector<std::optional<double>> slips(leaf.pieces.size());
    bool all = true;
    for (const Joint& joint : leaf.joints) {
      const Piece& enters = leaf.pieces[joint.enters];
      if (!joint.design.cheeks || enters.role == Role::dowel) continue;
      const double play = in_mm(*joint.design.cheeks);
      if (enters.role == Role::panel) {
        all = all && is_inside(play + error(D::groove_width) - error(D::panel_tongue), 0, 0.8);
      } else if (enters.role == Role::spline) {
        std::optional<double>& its = slips[joint.enters];
        if (!its) its = error(D::tenon_thickness, for_splines);
        all = all && is_fit(play + error(D::groove_width) - *its);
      } else if (enters.role == Role::loose_tenon) {
        std::optional<double>& its = slips[joint.enters];
        if (!its) its = error(D::tenon_thickness, for_loose_tenons);
        all = all && is_fit(play + error(D::mortise_width) - *its);
      } else if (!joint.mortise) {
        const SetUp set_up = are_stubs_apart(leaf) ? for_thin_stubs : usual;
        all = all && is_fit(play + error(D::groove_width) - error(D::tenon_thickness, set_up));
      } else {
        for (std::size_t tenon = 0; tenon < joint.tenon->each.size(); ++tenon)
          all = all && is_fit(play + error(D::mortise_width) - error(D::tenon_thickness));
      }
    }
    return all;
  }

 private:
  static bool is_inside(double play, double least, double most) {
    return least <= play && play <= most;
  }
  bool is_fit(double play) const {
    return is_inside(play, in_mm(tolerances_.fit.min), in_mm(tolerances_.fit.max));
  }
  static bool are_stubs_apart(const Assembly& leaf) {
    std::optional<Length> thickness;
    for (const Joint& joint : leaf.joints) {
      const Role role = leaf.pieces[joint.enters].role;
      if (!joint.tenon || role == Role::loose_tenon || role == Role::dowel) continue;
      if (thickness && *thickness != joint.tenon->thickness) return true;
      thickness = joint.tenon->thickness;
    }
    return false;
  }

  const Tolerances& tolerances_;
  Dice dice_;
  std::array<std::array<double, kSetUps>, kDimensions> settings_{};
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

TEST_CASE("Twin and divided tenons, each in its own mortise, agree with leaves cut") {
  CHECK(off_by(twinned_door(), all_to(0.1, true), 21) < 4);
  CHECK(off_by(twinned_door(), all_to(0.1, false), 22) < 4);
  Tolerances by_router = all_to(0.2, true);
  CHECK(off_by(mortised_door(), by_router, 23) < 4);
}

TEST_CASE("Loose tenons, each of one thickness at both of its ends, agree with leaves cut") {
  CHECK(off_by(loose_door(), all_to(0.12, true), 24) < 4);
  CHECK(off_by(loose_door(), all_to(0.12, false), 25) < 4);
  CHECK(off_by(loose_door(R"("panels": 2)"), all_to(0.15, true), 26) < 4);
  Tolerances tolerances = all_to(0.12, true);
  // Thicknesses far worse than mortises, and the other way round.
  of(tolerances, D::mortise_width).plus_minus = mm(0.02);
  CHECK(off_by(loose_door(), tolerances, 27) < 4);
  of(tolerances, D::mortise_width).plus_minus = mm(0.15);
  of(tolerances, D::tenon_thickness).plus_minus = mm(0.02);
  CHECK(off_by(loose_door(), tolerances, 28) < 4);
}

TEST_CASE("Splines in two slots each agree with leaves cut") {
  CHECK(off_by(mitred_door(R"("panels": 1)"), all_to(0.15, true), 29) < 4);
  CHECK(off_by(mitred_door(R"("panels": 1)"), all_to(0.1, false), 30) < 4);
  // Panels with little play: grooves that suit them do not suit the splines.
  CHECK(off_by(mitred_door(R"("panel": {"allowance": 0.05})"), all_to(0.12, true), 31) < 4);
  // A middle rail with tenons, and beside it stubs in the same grooves as splines and panels.
  CHECK(off_by(mitred_door(R"("rail_widths": [57, 57, 57], "panels": 2)"), all_to(0.12, true), 32) <
        4);
  CHECK(off_by(mitred_door(R"("tenon_depth": 9, "panels": 2)"), all_to(0.12, true), 33) < 4);
}

TEST_CASE("Both ends of a loose tenon are good as often as one of them where mortises are exact") {
  // One tenon in two mortises. Its thickness alone errs, and is the same at both ends.
  const Assembly leaf = loose_tenons_only(0.2, 1);
  Tolerances tolerances = three_four_five();
  of(tolerances, D::mortise_width).plus_minus = mm(0);
  const double one = only_joint(0.2, tolerances).share;
  CHECK_THAT(share_of(leaf, tolerances), WithinAbs(one, 1e-12));
  // Two tenons err each by itself.
  CHECK_THAT(share_of(loose_tenons_only(0.2, 2), tolerances), WithinAbs(one * one, 1e-12));
  // Its mortises alone err, each by itself: both are good as often as the product says.
  tolerances = three_four_five();
  of(tolerances, D::tenon_thickness).plus_minus = mm(0);
  const double each = only_joint(0.2, tolerances).share;
  CHECK_THAT(share_of(leaf, tolerances), WithinAbs(each * each, 2e-7));
}

TEST_CASE("The two ends of a loose tenon are between bound together and each by itself") {
  const Tolerances tolerances = three_four_five();
  const double one = only_joint(0.2, tolerances).share;
  const double both = share_of(loose_tenons_only(0.2, 1), tolerances);
  CHECK(both < one);
  CHECK(both > one * one);
}

TEST_CASE("Each of a divided or twin tenon is a fit of its own") {
  const auto fits = [](const Assembly& leaf) {
    int all = 0;
    for (const JointFit& fit : forecast_fits(leaf, all_to(0.1, true), Unit::mm).joints)
      if (!leaf.joints[fit.joint].design.bite) all += fit.fits;
    return all;
  };
  CHECK(fits(mortised_door()) == 14);
  CHECK(fits(twinned_door()) == 20);
  CHECK(fits(stubbed_door()) == 6);
  // 4 loose tenons of the outer rails, 4 of the middle one, which are divided; each in two
  // mortises.
  CHECK(fits(loose_door(R"("panels": 2, "rail_widths": [118, 118, 118])")) == 16);
}

TEST_CASE("Dowels and half-laps are left out, and told as such") {
  const Tolerances tolerances = all_to(0.1, true);
  for (const std::string_view joint : {"dowel", "half-lap"}) {
    INFO(joint);
    const Assembly leaf = wood(cabinet_mm(R"("joint": ")" + std::string(joint) + "\""));
    const FitForecast forecast = forecast_fits(leaf, tolerances, Unit::mm);
    CHECK(forecast.joints.size() == 4);  // the panel's edges
    REQUIRE_FALSE(forecast.left_out.empty());
    for (const std::size_t left_out : forecast.left_out)
      CHECK(word_of(leaf.joints[left_out].kind) == joint);
    CHECK(forecast.leaf.best_allowance == std::nullopt);
    CHECK_FALSE(forecast.flush);
  }
  CHECK(forecast_fits(mortised_door(), tolerances, Unit::mm).left_out.empty());
}

TEST_CASE("Faces of loose tenons: both mortises off their place, and half of both their widths") {
  Tolerances tolerances = all_to(0, false);
  of(tolerances, D::mortise_place).plus_minus = mm(0.2);
  of(tolerances, D::mortise_width).plus_minus = mm(0.2);
  of(tolerances, D::tenon_thickness).plus_minus = mm(0.1);
  auto flush = forecast_fits(loose_door(), tolerances, Unit::mm).flush;
  REQUIRE(flush);
  CHECK(flush->worst_max == mm(0.6));  // 0.2 + 0.2 + 0.1 + 0.1
  // sqrt(2 x 0.04 + 2 x 0.01)
  CHECK_THAT(in_mm(flush->rss_max), WithinAbs(0.316228, 1e-6));
  // What both share moves both faces alike: half of the variance, which is the setting's, drops
  // out.
  tolerances = all_to(0.2, true);
  flush = forecast_fits(loose_door(R"("panels": 2)"), tolerances, Unit::mm).flush;
  CHECK_THAT(in_mm(flush->rss_max), WithinAbs(0.223607, 1e-6));
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
  CHECK(leaf.pieces[width.pieces[1]].role == Role::rail);
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
    CHECK(open.pieces[alone.pieces[0]].role == Role::stile);
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
