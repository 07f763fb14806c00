// Files of readings: as strict as specs, each fault with its place.
#include "trial_reading.h"

#include "vocabulary.h"

namespace haunch::test {
namespace {

JointDesign tenon_44() {
  return {false,
          "rail",
          "stile",
          {mm(44), mm(14.575), mm(14.85), mm(70)},
          {mm(44), mm(14.5), mm(15), mm(72)}};
}

PanelDesign panel_300() {
  return {mm(12), mm(300), mm(8), mm(8.4)};
}

TrialReading reading(const std::string& text, const TrialDesign& design = tenon_44(),
                     Unit unit = Unit::mm) {
  const Reading json = read_json(text);
  REQUIRE(json.value.has_value());
  return read_trial(*json.value, design, unit);
}

JointReadings joint(const std::string& text, Unit unit = Unit::mm) {
  const TrialReading read = reading(text, tenon_44(), unit);
  for (const Problem& problem : read.problems)
    UNSCOPED_INFO(problem.path + ": " + problem.message);
  REQUIRE(read.readings.has_value());
  return std::get<JointReadings>(*read.readings);
}

/// "/path: message" of each problem.
std::vector<std::string> faults(const std::string& text, const TrialDesign& design = tenon_44(),
                                Unit unit = Unit::mm) {
  const TrialReading read = reading(text, design, unit);
  CHECK(read.readings.has_value() == read.problems.empty());
  std::vector<std::string> lines;
  for (const Problem& problem : read.problems)
    lines.push_back(problem.path + ": " + problem.message);
  return lines;
}

using Lines = std::vector<std::string>;

}  // namespace

TEST_CASE("One reading, several, or a shop's own sum of many") {
  const JointReadings read = joint(
      R"({"rail": {"thickness": 44}, "tenon": {"thickness": [14.9, 14.94], "from_face": "14.6 mm"},
          "mortise": {"width": {"mean": 15.02, "spread": 0.03, "count": 12}}})");
  CHECK(read.tenon.stock->mean == mm(44));
  CHECK(read.tenon.across->count == 2);
  CHECK(read.tenon.across->mean == mm(14.92));
  CHECK(read.tenon.from_face->mean == mm(14.6));
  CHECK(read.mortise.across->count == 12);
  CHECK(read.mortise.across->spread == mm(0.03));
  CHECK_FALSE(read.mortise.from_face.has_value());
}

TEST_CASE("Bare numbers are in the item's unit, or in the file's own") {
  CHECK(joint(R"({"tenon": {"thickness": 0.585}})", Unit::inch).tenon.across->mean ==
        Length::from_inch_parts(585, 1000));
  CHECK(joint(R"({"units": "in", "tenon": {"thickness": 0.585}})").tenon.across->mean ==
        Length::from_inch_parts(585, 1000));
  CHECK(joint(R"({"units": "mm", "tenon": {"thickness": 14.9}})", Unit::inch).tenon.across->mean ==
        mm(14.9));
}

TEST_CASE("Band and calipers are the usual ones of the unit, unless given") {
  const JointReadings usual = joint(R"({"tenon": {"depth": 70}})");
  CHECK(usual.band.min == Length());
  CHECK(usual.band.max == mm(0.25));
  CHECK(usual.caliper_error == mm(0.05));
  const JointReadings inch = joint(R"({"tenon": {"depth": "2 3/4"}})", Unit::inch);
  CHECK(inch.band.max == Length::from_inch_parts(1, 100));
  CHECK(inch.caliper_error == Length::from_inch_parts(2, 1000));
  const JointReadings own =
      joint(R"({"tenon": {"depth": 70}, "caliper": 0.02, "fit": {"min": 0.05}})");
  CHECK(own.caliper_error == mm(0.02));
  CHECK(own.band.min == mm(0.05));
  CHECK(own.band.max == mm(0.25));
}

TEST_CASE("What is wrong with a file of readings is told at its place, all at once") {
  CHECK(
      faults(R"({"tenon": {"thicknes": 14.9}, "rail": 44, "mortise": {"width": []},
                   "stile": {"thickness": [44, true]}, "calliper": 0.02})") ==
      Lines{
          R"(/calliper: unknown key; did you mean "caliper"?)",
          R"(/rail: 44 is not an object; its keys are "thickness")",
          R"(/tenon/thicknes: unknown key; did you mean "thickness"?)",
          R"(/stile/thickness/1: true is not a length; write a number, or a text such as "65 mm" or "2 9/16 in")",
          "/mortise/width: holds no reading; leave it out, or write one"});
}

TEST_CASE("A readings file that is no object, or empty, is told so") {
  CHECK(faults("14.9") == Lines{": 14.9 is not what was measured; write an object of readings"});
  CHECK(faults("{}") ==
        Lines{R"(: nothing is measured; write at least "tenon": {"thickness": …})"});
}

TEST_CASE("A sum of many readings is whole, its spread not negative, its count at least two") {
  CHECK(faults(R"({"tenon": {"thickness": {"mean": 14.9, "spread": -0.03, "count": 1}}})") ==
        Lines{"/tenon/thickness/spread: -0.03 is negative; a spread is how far readings stray, at "
              "least 0",
              "/tenon/thickness/count: 1 is out of range; it must be from 2 to 1000000"});
  CHECK(
      faults(R"({"tenon": {"thickness": {"mean": 14.9, "count": 4}}})") ==
      Lines{
          R"(/tenon/thickness: lacks "spread"; readings summed up have "mean", "spread" and "count")"});
}

TEST_CASE("A reading out by 25.4 is told, with what to write") {
  CHECK(faults(R"({"tenon": {"thickness": [14.9, 0.587]}})") ==
        Lines{"/tenon/thickness/1: 0.587 is 0.587 mm, about 25.4 times less than the designed "
              "14.85 mm: a reading in inches; write \"0.587 in\""});
  CHECK(faults(R"({"mortise": {"width": 15.1}})", tenon_44(), Unit::inch)
            .front()
            .find("a reading in mm; write \"15.1 mm\"") != std::string::npos);
}

TEST_CASE("Readings that contradict one another are refused with the sum shown") {
  CHECK(faults(R"({"rail": {"thickness": 44},
                   "tenon": {"from_face": 14.6, "thickness": 14.9, "from_back": 14.3}})") ==
        Lines{"/tenon: the readings contradict each other: 14.6 mm from the face side + 14.9 mm "
              "tenon + 14.3 mm from the back = 43.8 mm, but the rail is 44 mm thick, 0.2 mm more; "
              "with calipers true to 0.05 mm one of them is wrong: measure again"});
  CHECK(faults(R"({"rail": {"thickness": 44}, "caliper": 0.2,
                   "tenon": {"from_face": 14.6, "thickness": 14.9, "from_back": 14.3}})")
            .empty());
}

TEST_CASE("A band needs room") {
  CHECK(faults(R"({"tenon": {"depth": 70}, "fit": {"min": 0.2, "max": 0.2}})") ==
        Lines{R"(/fit: "min" 0.2 mm is not below "max" 0.2 mm; give the band some room)"});
}

TEST_CASE("A stub stands in a groove, and a muntin's tenon in a rail") {
  JointDesign stub = tenon_44();
  stub.stub = true;
  stub.tenon_role = "muntin";
  stub.mortise_role = "rail";
  const TrialReading read = reading(R"({"muntin": {"thickness": 44}, "rail": {"thickness": 44.2},
                  "groove": {"width": 15.1}})",
                                    stub);
  REQUIRE(read.readings.has_value());
  const auto& joint = std::get<JointReadings>(*read.readings);
  CHECK(joint.tenon.stock->mean == mm(44));
  CHECK(joint.mortise.stock->mean == mm(44.2));
  CHECK(joint.mortise.across->mean == mm(15.1));
  CHECK(
      faults(R"({"groove": {"width": 15.1}, "mortise": {"width": 15.1}})", stub)
          .front()
          .starts_with("/mortise: is not measured here, for the joint has a tenon; the keys are"));
}

TEST_CASE("A panel is read at points, at its edges unless told where") {
  const TrialReading read =
      reading(R"({"panel": {"remaining": [10, {"thickness": 9.8, "at": 120}], "cup": 0.4,
                            "hollow": "second", "removed": 2}, "fit": {"max": 0.5}})",
              panel_300());
  REQUIRE(read.readings.has_value());
  const auto& panel = std::get<PanelReadings>(*read.readings);
  REQUIRE(panel.remaining.size() == 2);
  CHECK_FALSE(panel.remaining[0].at.has_value());
  CHECK(panel.remaining[1].thickness == mm(9.8));
  CHECK(panel.remaining[1].at == mm(120));
  CHECK(panel.cup == mm(0.4));
  CHECK(panel.hollow == Face::second);
  CHECK(panel.removed == mm(2));
  CHECK(panel.play.max == mm(0.5));
}

TEST_CASE("What is wrong with the readings of a panel is told") {
  CHECK(
      faults(R"({"panel": {"remaining": [10, {"thickness": 9.8, "at": 301}, 0.39], "cup": 0.4}})",
             panel_300()) ==
      Lines{
          "/panel/remaining/1/at: 301 is beyond the panel, which is 300 mm wide across the "
          "grain",
          "/panel/remaining/2: 0.39 is 0.39 mm, about 25.4 times less than the designed 12 mm: "
          "a reading in inches; write \"0.39 in\"",
          R"(/panel: has a cup but no "hollow"; write "first" or "second", the face that is hollow)"});
  CHECK(
      faults(R"({"tenon": {"thickness": 14.9}})", panel_300()) ==
      Lines{
          R"(/tenon: is not measured here, for the joint is a panel's in its groove; the keys are "panel", "fit", "units" and "note")",
          R"(: nothing is measured; write at least "panel": {"remaining": […]})"});
  CHECK(faults(R"({"panel": {"remaining": []}})", panel_300()) ==
        Lines{"/panel/remaining: holds no reading; leave it out, or write one"});
}

}  // namespace haunch::test
