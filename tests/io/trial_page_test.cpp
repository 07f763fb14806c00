// What a trial cut came to, as its page tells it: the outcomes are made up here.
#include "trial_page.h"

#include "trial_json.h"
#include "vocabulary.h"

namespace haunch::test {
namespace {

/// A mortise of 15 in 44 mm stock and its tenon, of which nothing was read yet.
JointOutcome joint_of_44() {
  JointOutcome joint;
  joint.design = {false,
                  "rail",
                  "stile",
                  {mm(44), mm(14.575), mm(14.85), mm(70)},
                  {mm(44), mm(14.5), mm(15), mm(72)}};
  joint.readings.band = {mm(0), mm(0.25)};
  joint.readings.caliper_error = mm(0.05);
  joint.trial = try_joint(joint.design, joint.readings);
  return joint;
}

/// A panel that came out a little uneven after its first face.
PanelOutcome panel_of_18() {
  PanelOutcome panel;
  panel.design = {mm(18), mm(300), mm(10), mm(10.4)};
  panel.readings.remaining = {{mm(14.1), std::nullopt}, {mm(14.4), mm(150)}};
  panel.readings.play = {mm(0), mm(0.8)};
  panel.trial = try_panel(panel.design, panel.readings, Unit::mm);
  return panel;
}

std::string page_of(std::variant<JointOutcome, PanelOutcome> outcome) {
  const TrialReport report{"side-door",       "J1", "C", "top rail", "A", "left stile",
                           std::move(outcome)};
  return trial_page(report, Unit::mm, LengthPrinter(Unit::mm, {}));
}

bool tells(const std::string& page, std::string_view words) {
  return page.find(words) != std::string::npos;
}

}  // namespace

TEST_CASE("The page says which pieces were tried, and what is to be measured next") {
  const std::string page = page_of(joint_of_44());
  CHECK(
      page.starts_with("side-door, trial of J1: C (top rail) into A (left stile); sizes in mm\n"));
  CHECK(tells(page, "\nMEASURE NEXT\n  - "));
}

TEST_CASE("Of what was not measured nothing is told as cut") {
  CHECK_FALSE(tells(page_of(joint_of_44()), "AS CUT"));
}

TEST_CASE("A fit outside its band is told with how far it is from the one wanted") {
  JointOutcome joint = joint_of_44();
  joint.trial.fit = mm(-0.1);
  CHECK(tells(page_of(joint), "too tight by 0.1 to go in: 0.25 tighter than the 0.15 wanted,"));
  joint.trial.fit = mm(0.2);
  CHECK(tells(page_of(joint), "fit 0.2, both cheeks together: 0.05 looser than the 0.15 wanted,"));
  joint.trial.fit = mm(0.15);
  CHECK(tells(page_of(joint), "fit 0.15, both cheeks together, as wanted"));
}

TEST_CASE("A rail that stands proud is told at both its sides") {
  JointOutcome joint = joint_of_44();
  joint.trial.flush = Flush{mm(0.2), mm(-0.1), mm(0.2), mm(0.2)};
  CHECK(tells(page_of(joint),
              "face side: rail 0.2 proud of the stile; back: rail 0.1 below the stile\n"));
}

TEST_CASE("A tenon too long for its mortise leaves the shoulder open") {
  JointOutcome joint = joint_of_44();
  joint.trial.bottom = mm(-0.5);
  CHECK(tells(page_of(joint), "the tenon meets the bottom: the shoulder stays 0.5 open, designed"));
}

TEST_CASE("Machines with two cutters are told the spacer, those with one the half of it") {
  JointOutcome joint = joint_of_44();
  joint.trial.tenon.across = {joint.trial.tenon_wanted + mm(0.3), Source::measured};
  const std::string page = page_of(joint);
  INFO(page);
  CHECK(tells(page, "one cutter and the work turned over: 0.15 more off each cheek"));
  CHECK(tells(page, "two cutters with a spacer between: the spacer 0.3 thinner"));
}

TEST_CASE("A panel's page tells each point, and how deep to go into the second face") {
  PanelOutcome panel = panel_of_18();
  panel.trial.tongue.worst_point = 1;
  panel.trial.tongue.worst = mm(0.15);
  const std::string page = page_of(panel);
  INFO(page);
  CHECK(tells(page, "1  at an edge           14.1\n"));
  CHECK(tells(page, "thickness differs by 0.3; cup 0\n"));
  CHECK(tells(
      page, "second face: " + LengthPrinter(Unit::mm, {}).one(panel.trial.tongue.depth) + " deep"));
  CHECK(tells(page, "worst at point 2: 0.15 too thick\n"));
}

TEST_CASE("A panel's cup is told with the face that is hollow") {
  PanelOutcome panel = panel_of_18();
  panel.readings.cup = mm(0.8);
  panel.readings.hollow = Face::second;
  CHECK(tells(page_of(panel), "cup 0.8, hollow on the second face\n"));
}

TEST_CASE("In JSON what was not measured is null, and a point is counted from 1") {
  const auto json_of = [](const std::variant<JointOutcome, PanelOutcome>& outcome) {
    return trial_json({"side-door", "J1", "C", "top rail", "A", "left stile", outcome}, Unit::mm,
                      Unit::mm);
  };
  CHECK(tells(json_of(joint_of_44()), R"("fit": null, "bottom": null, "flush": null)"));
  PanelOutcome panel = panel_of_18();
  panel.trial.tongue.worst_point = 1;
  CHECK(tells(json_of(panel), R"("worst_point": 2)"));
}

}  // namespace haunch::test
