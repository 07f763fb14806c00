// What holds for all checks.
#include <filesystem>
#include <fstream>
#include <map>
#include <set>
#include <sstream>

#include "corner.h"
#include "vocabulary.h"

namespace haunch::test {
namespace {

/// The worst status of each check.
std::map<std::string, Status> worst(const Assembly& assembly, Unit unit) {
  std::map<std::string, Status> statuses;
  for (const Finding& finding : check_assembly(assembly, unit)) {
    auto& status = statuses.try_emplace(std::string(finding.rule->check), Status::ok).first->second;
    status = std::max(status, finding.status);
  }
  return statuses;
}

/// A prism of a piece so long, wide and thick, as seen in a mirror across one of its own axes.
Prism mirrored(Prism prism, const Triple& blank, std::size_t own) {
  if (prism.along == own) {
    const Length from = blank[own] - prism.to;
    prism.to = blank[own] - prism.from;
    prism.from = from;
    return prism;
  }
  const bool first = own == (prism.along == 0 ? 1U : 0U);
  for (Corner& corner : prism.outline)
    (first ? corner.u : corner.v) = blank[own] - (first ? corner.u : corner.v);
  return prism;
}

/// The assembly as seen in a mirror across one axis.
Assembly mirrored(Assembly assembly, std::size_t axis) {
  for (Piece& piece : assembly.pieces) {
    const Box blank = placed_blank(piece);
    piece.place.origin[axis] = assembly.size[axis] - blank.high[axis];
    for (std::size_t own = 0; own < 3; ++own) {
      if (static_cast<std::size_t>(piece.place.axes[own]) != axis) continue;
      for (Feature& feature : piece.features) {
        for (Box& cut : feature.cuts) {
          const Length low = piece.blank[own] - cut.high[own];
          cut.high[own] = piece.blank[own] - cut.low[own];
          cut.low[own] = low;
        }
        for (Prism& prism : feature.prisms)
          prism = mirrored(std::move(prism), piece.blank, own);
      }
    }
  }
  for (Joint& joint : assembly.joints)
    if (static_cast<std::size_t>(joint.heading.axis) == axis)
      joint.heading.upwards = !joint.heading.upwards;
  return assembly;
}

/// The assembly turned about, so that what lay upright lies level.
Assembly turned(Assembly assembly) {
  const auto turn = [](Axis axis) {
    return axis == Axis::x ? Axis::y : axis == Axis::y ? Axis::x : Axis::z;
  };
  std::swap(assembly.size[0], assembly.size[1]);
  Fit& fit = opening_of(assembly);
  std::swap(fit.width, fit.height);
  fit.room = {fit.room.foot, fit.room.head, fit.room.right, fit.room.left};
  for (Piece& piece : assembly.pieces) {
    std::swap(piece.place.origin[0], piece.place.origin[1]);
    for (Axis& axis : piece.place.axes)
      axis = turn(axis);
  }
  for (Joint& joint : assembly.joints) {
    joint.heading.axis = turn(joint.heading.axis);
    joint.through = turn(joint.through);
  }
  return assembly;
}

/// The verdict on a leaf that was turned, in the words of one that was not.
std::string verdict_turned(const Assembly& assembly, Unit unit) {
  std::set<std::string> words;
  std::string text = verdict(turned(assembly), unit) + ", ";
  const std::map<std::string, std::string> swaps{{"leaf-width fail", "leaf-height fail"},
                                                 {"leaf-height fail", "leaf-width fail"},
                                                 {"opening-width fail", "opening-height fail"},
                                                 {"opening-height fail", "opening-width fail"}};
  for (std::size_t at = 0; text.size() > 2 && at < text.size(); at = text.find(", ", at) + 2) {
    const std::string word = text.substr(at, text.find(", ", at) - at);
    const auto swap = swaps.find(word);
    words.insert(swap == swaps.end() ? word : swap->second);
  }
  std::string sorted;
  for (const std::string& word : words)
    sorted += (sorted.empty() ? "" : ", ") + word;
  return sorted;
}

}  // namespace

TEST_CASE("The corner as it stands is sound, in both shops") {
  CHECK(verdict(corner(), Unit::mm).empty());
  CHECK(verdict(corner(), Unit::inch).empty());
}

TEST_CASE("Every rule is seen to hold and seen to be broken") {
  std::map<std::string, int> broken;
  std::vector<Breakage> rows = all_breakages();
  for (Breakage& row : breakages_of_frames())
    rows.push_back(std::move(row));
  for (const Breakage& row : rows) {
    const auto at = worst(row.at, row.unit);
    for (const auto& [check, status] : worst(row.beyond, row.unit)) {
      const auto before = at.find(check);
      if (before != at.end() && before->second == Status::ok && status != Status::ok)
        ++broken[check];
    }
  }
  // Those of moved wood have their turn with the seasons, those of fittings with the clashes and
  // strikes; those of other joints than tenons, of pairs and of laps with these (kinds/joints_test,
  // dowel_test, half_lap_test, mitre_test, pin_test, pairs_test, overlay_test), of arched tops, of
  // glass and its bars and of openings as found with those (arches_test, glass_test,
  // glazing_bar_test, as_found_test); joints as they are seen with seen_joints_test;
  // those that go by more than the wood with what they go by (leaf_rules_test, usual_year_test).
  const std::set<std::string_view> elsewhere{
      "fitting-clash", "fitting-wall", "fitting-through", "gain-across", "strike-across",
      "opening-left", "opening-right", "opening-head", "opening-foot", "opening-stop", "edge-swell",
      "cheek-swell", "shoulder-move", "twin-wall", "mortise-edge", "twin-thickness", "one-edge-fit",
      "wedge-fit", "meeting-front", "meeting-back", "meeting-sight", "meeting-lap", "meeting-rest",
      "meeting-gap", "lap-left", "lap-right", "lap-head", "lap-foot", "lip-rest", "lip-left",
      "lip-right", "lip-head", "dowel-fit", "dowel-fit-across", "dowel-room", "dowel-depth",
      "dowel-thickness", "dowel-row", "hole-wall", "hole-behind", "hole-edge", "hole-groove",
      "hole-between", "half-lap-seat", "half-lap-shoulder", "half-lap-fit", "half-lap-thickness",
      "glued-half-lap", "mitre-closed", "mitre-open", "spline-fit", "spline-room", "spline-ends",
      "slot-wall", "slot-edge", "long-shoulder-move", "opening-arch", "glass-bite",
      "glass-clearance", "glass-bedding", "unit-rebate", "bead-home", "bead-thickness",
      "bar-tongue", "glass-machining", "pin-draw", "pin-shear", "pin-root", "pin-beside",
      "pin-cheek", "pin-wall", "pin-behind", "found-room", "found-gap", "found-packing",
      "cabinet-middle-rail", "outside-thickness", "leaf-thickness", "smooth-bottom",
      "stile-for-cups", "hung-width", "hung-height", "panel-season", "panel-season-bite",
      "joint-shut-face", "joint-shut-back", "joint-shut-edge",
      // of cases (fronts_test, shelves_test, standing_test, case_seasons_test,
      // kinds/face_frame_test)
      "held-across", "slot-play", "front-gap-left", "front-gap-right", "front-gap-head",
      "front-gap-foot", "front-lap-left", "front-lap-right", "front-lap-head", "front-lap-foot",
      "slide-out", "slide-in", "drawer-runs", "drawer-middle", "slide-past-door", "swing-free",
      "goes-in-straight", "goes-in-tilted", "shelf-pin-pitch", "shelf-pin-level",
      "shelf-pin-behind", "screw-wall", "shelf-sag", "stand-up", "tipping-margin",
      // of runs beside walls and in corners (boundaries_test, corners_test)
      "corner-clear", "corner-opens", "corner-passed", "wall-left", "wall-right", "place-clear",
      "filler-width", "filler-least", "swing-past", "handle-past", "slide-past", "open-together",
      // of dovetails, fingers and tongues (kinds/dovetail_test), and of drawers (kinds/drawer_test)
      "dovetail-fit", "dovetail-home", "dovetail-inside", "half-pin", "pin-width", "tail-width",
      "tail-slope", "groove-in-tail", "dovetail-lap", "pins-flush", "finger-fit", "finger-inside",
      "tongue-fit", "tongue-room", "drawer-sides", "drawer-head",
      // of the way to its place (carrying_test)
      "way-through-door", "way-round-stair", "way-in-lift",
      // of runs (cli/run-worktop.case)
      "cutout-edge", "cutout-below", "front-lines"};
  for (const Rule* rule : all_rules()) {
    if (elsewhere.contains(rule->check)) continue;
    INFO(rule->check);
    CHECK(broken[std::string(rule->check)] > 0);
  }
}

TEST_CASE("Every rule has a name of its own, words and a reason") {
  std::set<std::string_view> names;
  for (const Rule* rule : all_rules()) {
    CHECK(names.insert(rule->check).second);
    CHECK_FALSE(rule->words.empty());
    CHECK_FALSE(rule->reason.empty());
  }
}

TEST_CASE("No finding is of a rule that is not listed") {
  const std::vector<const Rule*> rules = all_rules();
  for (const Breakage& row : all_breakages())
    for (const Finding& finding : check_assembly(row.beyond, row.unit))
      CHECK(std::find(rules.begin(), rules.end(), finding.rule) != rules.end());
}

TEST_CASE("A leaf is judged alike from left and right, from front and back") {
  for (const Breakage& row : all_breakages()) {
    INFO(row.says);
    for (const std::size_t axis : {0U, 2U}) {
      CHECK(verdict(mirrored(row.at, axis), row.unit) == row.verdict_at);
      CHECK(agrees(verdict(mirrored(row.beyond, axis), row.unit), row.verdict_beyond));
    }
  }
}

TEST_CASE("A leaf is judged alike upside down and lying, but for its lock rail") {
  for (const Breakage& row : all_breakages()) {
    if (row.verdict_beyond.find("lock-rail") != std::string::npos) continue;
    INFO(row.says);
    CHECK(agrees(verdict(mirrored(row.beyond, 1), row.unit), row.verdict_beyond));
    CHECK(agrees(verdict_turned(row.beyond, row.unit), row.verdict_beyond));
  }
}

TEST_CASE("A shortfall is how far a figure lies outside its limits") {
  Finding finding;
  finding.min = mm(3);
  finding.max = mm(5);
  finding.value = mm(2.5);
  CHECK(shortfall(finding) == mm(0.5));
  finding.value = mm(7);
  CHECK(shortfall(finding) == mm(2));
  for (const double inside : {3.0, 4.0, 5.0}) {
    finding.value = mm(inside);
    CHECK(shortfall(finding) == Length());
  }
}

namespace {

/// The specs of examples/ that are worked without a shop file beside them.
std::vector<std::unique_ptr<Job>> example_jobs() {
  std::vector<std::unique_ptr<Job>> jobs;
  for (const auto& entry : std::filesystem::directory_iterator(HAUNCH_EXAMPLES)) {
    if (entry.path().extension() != ".json") continue;
    std::ifstream file(entry.path());
    std::ostringstream text;
    text << file.rdbuf();
    JobReading reading = read_job(value_of(text.str()), nullptr, "job");
    if (reading.job) jobs.push_back(std::move(reading.job));
  }
  return jobs;
}

bool says_the_same(const Finding& a, const Finding& b) {
  return a.rule == b.rule && a.status == b.status && a.parts == b.parts && a.joint == b.joint &&
         a.value == b.value && a.moisture == b.moisture && a.fitting == b.fitting &&
         a.ok_min == b.ok_min && a.ok_max == b.ok_max;
}

bool say_the_same(const std::vector<Finding>& a, const std::vector<Finding>& b) {
  return std::equal(a.begin(), a.end(), b.begin(), b.end(), says_the_same);
}

}  // namespace

TEST_CASE("What the families of a finding find is what all checks find of it") {
  std::size_t rules = 0;
  for (const std::unique_ptr<Job>& job : example_jobs()) {
    const Assembly wood = work(*job).assembly;
    const std::vector<Finding> all = check_job(wood, *job);
    std::set<std::pair<const Rule*, bool>> seen;
    for (const Finding& finding : all) {
      if (!seen.emplace(finding.rule, finding.moisture.has_value()).second) continue;
      ++rules;
      INFO(finding.rule->check);
      const std::vector<Finding> some = GradualChecks(wood, *job).some(ChecksOf({finding}));
      CHECK(some.size() < all.size());
      for (const Finding& same : all)
        if (same.rule == finding.rule && same.moisture == finding.moisture)
          CHECK(std::any_of(some.begin(), some.end(),
                            [&](const Finding& it) { return says_the_same(it, same); }));
    }
  }
  CHECK(rules > 500);
}

TEST_CASE("All checks after some find what all find at once") {
  for (const std::unique_ptr<Job>& job : example_jobs()) {
    const Assembly wood = work(*job).assembly;
    const std::vector<Finding> all = check_job(wood, *job);
    for (std::size_t i = 0; i < all.size(); i += 1 + all.size() / 4) {
      GradualChecks checks(wood, *job);
      checks.some(ChecksOf({all[i]}));
      CHECK(say_the_same(checks.all(), all));
    }
  }
}

}  // namespace haunch::test
