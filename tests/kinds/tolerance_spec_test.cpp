// Tolerances in a spec and a shop file: the spec's win over the shop's, the shop's over the usual.
#include "tolerance_spec.h"

#include "spec_reader.h"
#include "vocabulary.h"

namespace haunch::test {
namespace {

struct ReadTolerances {
  Spec spec;
  std::string problems;
};

/// As a shop file's, which need not say anything else.
ReadTolerances read(std::string_view json, std::optional<Unit> unit = Unit::mm) {
  SpecReading reading = read_spec(value_of(json), {.of = kOfShop}, unit);
  return {std::move(reading.spec), in_lines(reading.problems)};
}

Spec right(std::string_view json, std::optional<Unit> unit = Unit::mm) {
  ReadTolerances its = read(json, unit);
  if (!its.problems.empty()) throw std::invalid_argument("refused: " + its.problems);
  return its.spec;
}

SettledTolerances settled(std::string_view spec, std::string_view shop = "{}",
                          Unit unit = Unit::mm) {
  Spec both = right(spec, unit);
  overlay(both, right(shop, unit), kOfDoor);
  return settle_tolerances(both);
}

Length plus_minus(const SettledTolerances& its, Dimension dimension) {
  return its.tolerances.of(dimension).plus_minus;
}

/// Why a value was assumed; empty if it was not.
std::string why(const SettledTolerances& its, std::string_view key) {
  for (const Assumed& assumed : its.assumed)
    if (assumed.key == key) return assumed.why;
  return {};
}

using D = Dimension;

}  // namespace

TEST_CASE("A spec that says nothing of tolerances is taken to be cut by router and saw") {
  const SettledTolerances its = settled("{}");
  CHECK(its.problems.empty());
  CHECK(its.tolerances.work == Work::router);
  CHECK(plus_minus(its, D::tenon_thickness) == mm(0.2));
  CHECK(plus_minus(its, D::mortise_width) == mm(0.2));
  CHECK(plus_minus(its, D::groove_width) == mm(0.2));
  CHECK(plus_minus(its, D::panel_tongue) == mm(0.2));
  CHECK(plus_minus(its, D::mortise_place) == mm(0.2));
  CHECK(plus_minus(its, D::shoulder_length) == mm(0.25));
  CHECK(plus_minus(its, D::piece_width) == mm(0.25));
  CHECK(its.tolerances.fit.min == mm(0));
  CHECK(its.tolerances.fit.max == mm(0.25));
  CHECK(its.tolerances.deviations == 3);
  CHECK(its.tolerances.setting_share == 50);
  CHECK(its.tolerances.wanted_share == 95);
  for (const Tolerance& tolerance : its.tolerances.each)
    CHECK(tolerance.one_setting);
  // work, 7 dimensions, 3 of the model, 3 of the fit
  CHECK(its.assumed.size() == 14);
  CHECK(why(its, "tolerance.tenon_thickness") == "usual for work by router and saw");
}

TEST_CASE("By hand nothing is truer than the saw, by numerical control all is") {
  const SettledTolerances hand = settled(R"({"work": "hand"})");
  const SettledTolerances nc = settled(R"({"work": "nc"})");
  for (std::size_t i = 0; i < kDimensions; ++i) {
    CHECK(hand.tolerances.each[i].plus_minus == mm(0.25));
    CHECK(nc.tolerances.each[i].plus_minus == mm(0.1));
    CHECK(nc.tolerances.each[i].one_setting);
  }
  // What a chisel's or a plough iron's own width makes.
  CHECK(hand.tolerances.of(D::mortise_width).one_setting);
  CHECK(hand.tolerances.of(D::groove_width).one_setting);
  CHECK_FALSE(hand.tolerances.of(D::tenon_thickness).one_setting);
  CHECK_FALSE(hand.tolerances.of(D::piece_width).one_setting);
  CHECK(why(hand, "work").empty());
}

TEST_CASE("An inch shop has the usual tolerances in thousandths") {
  const SettledTolerances its = settled("{}", "{}", Unit::inch);
  CHECK(plus_minus(its, D::tenon_thickness) == Length::from_inch_parts(8, 1000));
  CHECK(plus_minus(its, D::shoulder_length) == Length::from_inch_parts(10, 1000));
  CHECK(its.tolerances.fit.max == Length::from_inch_parts(10, 1000));
}

TEST_CASE("The spec's tolerances win over the shop's, the shop's over the usual") {
  const SettledTolerances its =
      settled(R"({"tolerance": {"tenon_thickness": 0.05}, "fit": {"max": 0.2}})",
              R"({"work": "nc", "tolerance": {"tenon_thickness": 0.1, "mortise_width": "0.003 in",
                  "deviations": 2}, "fit": {"min": 0.03, "max": 0.4, "share": 80}})");
  CHECK(its.tolerances.work == Work::nc);
  CHECK(why(its, "work") == "the shop file");
  CHECK(plus_minus(its, D::tenon_thickness) == mm(0.05));
  CHECK(why(its, "tolerance.tenon_thickness").empty());
  CHECK(plus_minus(its, D::mortise_width) == Length::from_inch_parts(3, 1000));
  CHECK(why(its, "tolerance.mortise_width") == "the shop file");
  CHECK(plus_minus(its, D::groove_width) == mm(0.1));
  CHECK(why(its, "tolerance.groove_width") == "usual for numerically controlled work");
  CHECK(its.tolerances.deviations == 2);
  CHECK(its.tolerances.fit.min == mm(0.03));
  CHECK(why(its, "fit.min") == "the shop file");
  CHECK(its.tolerances.fit.max == mm(0.2));
  CHECK(why(its, "fit.max").empty());
  CHECK(its.tolerances.wanted_share == 80);
}

TEST_CASE("A spec may say what is cut at one setting, or that nothing is") {
  const SettledTolerances some =
      settled(R"({"tolerance": {"one_setting": ["panel_tongue"], "setting_share": 90}})");
  for (std::size_t i = 0; i < kDimensions; ++i)
    CHECK(some.tolerances.each[i].one_setting == (static_cast<D>(i) == D::panel_tongue));
  CHECK(some.tolerances.setting_share == 90);
  const SettledTolerances none = settled(R"({"work": "nc", "tolerance": {"one_setting": []}})",
                                         R"({"tolerance": {"one_setting": ["piece_width"]}})");
  for (const Tolerance& tolerance : none.tolerances.each)
    CHECK_FALSE(tolerance.one_setting);
}

TEST_CASE("A tolerance of 0 and a band of one fit are allowed") {
  const SettledTolerances its =
      settled(R"({"tolerance": {"tenon_thickness": 0}, "fit": {"min": 0.1, "max": 0.1}})");
  CHECK(its.problems.empty());
  CHECK(plus_minus(its, D::tenon_thickness) == mm(0));
}

TEST_CASE("What is wrong with a tolerance is told where it stands") {
  const auto problems = [](std::string_view json) { return read(json).problems; };
  CHECK(problems(R"({"work": "cnc"})") == R"(/work: "cnc" is not known here; did you mean "nc"?)");
  CHECK(problems(R"({"work": "laser"})") ==
        R"(/work: "laser" is not known here; write "hand", "router" or "nc")");
  CHECK(problems(R"({"tolerance": 0.1})") ==
        R"(/tolerance: 0.1 is not an object; the keys in it are "tenon_thickness", )"
        R"("mortise_width", "groove_width", "panel_tongue", "shoulder_length", "mortise_place", )"
        R"("piece_width", "deviations", "one_setting" and "setting_share")");
  CHECK(problems(R"({"tolerance": {"tenon_thicknes": 0.1}})") ==
        R"(/tolerance/tenon_thicknes: unknown key; did you mean "tenon_thickness"?)");
  CHECK(problems(R"({"fit": {"least": 0.1}})") ==
        R"(/fit/least: unknown key; the keys here are "min", "max" and "share")");
  CHECK(problems(R"({"tolerance": {"groove_width": -0.1}})")
            .starts_with("/tolerance/groove_width: "));
  CHECK(problems(R"({"fit": {"min": -0.1}})").starts_with("/fit/min: "));
  CHECK(problems(R"({"tolerance": {"deviations": 0}})") ==
        "/tolerance/deviations: 0 is out of range; it must be from 1 to 6");
  CHECK(problems(R"({"tolerance": {"setting_share": 91}})") ==
        "/tolerance/setting_share: 91 is out of range; it must be from 0 to 90");
  CHECK(problems(R"({"fit": {"share": 100}})") ==
        "/fit/share: 100 is out of range; it must be from 1 to 99");
  CHECK(problems(R"({"tolerance": {"one_setting": "tenon_thickness"}})") ==
        R"(/tolerance/one_setting: "tenon_thickness" is not a list; write what is cut at one )"
        R"(setting, such as ["tenon_thickness"])");
  CHECK(problems(R"({"tolerance": {"one_setting": ["groove_width", "groove_width"]}})") ==
        R"(/tolerance/one_setting/1: "groove_width" stands here twice; keep one)");
  CHECK(read(R"({"tolerance": {"tenon_thickness": 0.1}})", std::nullopt)
            .problems.starts_with("/tolerance/tenon_thickness: 0.1 has no unit"));
}

TEST_CASE("A tightest fit over the loosest is refused, wherever the two come from") {
  const auto problems = [](std::string_view spec, std::string_view shop = "{}") {
    return in_lines(settled(spec, shop).problems);
  };
  CHECK(problems(R"({"fit": {"min": 0.2, "max": 0.1}})") ==
        R"(/fit/min: the tightest fit, 0.2 mm, is over the loosest, 0.1 mm; make it less, or )"
        R"("max" more)");
  CHECK(problems(R"({"fit": {"min": 0.3}})") ==
        R"(/fit/min: the tightest fit, 0.3 mm, is over the loosest, 0.25 mm (the usual one); )"
        R"(make it less, or "max" more)");
  CHECK(problems(R"({"fit": {"max": 0.1}})", R"({"fit": {"min": 0.15}})") ==
        R"(/fit/max: the loosest fit, 0.1 mm, is under the tightest, 0.15 mm (the shop file's); )"
        R"(make it more, or "min" less)");
  CHECK(problems(R"({"fit": {"min": 0.1}})", R"({"fit": {"max": 0.15}})").empty());
}

TEST_CASE("Tolerances are read in the spec's unit, and are none of the sizes that it gives") {
  const SpecReading reading =
      read_spec(value_of(R"({"tolerance": {"tenon_thickness": "1/256"}, "fit": {"max": 0.01}})"),
                {.of = kOfShop}, Unit::inch);
  CHECK(reading.spec.size("tolerance.tenon_thickness") == Length::from_inch_parts(1, 256));
  CHECK(reading.spec.size("fit.max") == Length::from_inch_parts(1, 100));
  CHECK(reading.given.empty());
}

}  // namespace haunch::test
