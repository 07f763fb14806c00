// Twenty thousand random doors (times HAUNCH_TEST_EFFORT), each judged by a second opinion on its
// wood. HAUNCH_TEST_SEED=n runs the one with that seed again.

#include <algorithm>
#include <array>
#include <map>

#include "catch.h"
#include "property_runs.h"
#include "random_spec.h"
#include "spec_agreement.h"
#include "wood_oracle.h"

namespace haunch::test {

namespace {

std::string json_of(const DoorSpec& spec, std::uint64_t seed) {
  return to_json(spec, {spec.unit, seed, seed % 3 == 0, true});
}

/// How often each thing came up, so that a property is known to have met it.
class Occurrences {
 public:
  void note(const Assembly& assembly) {
    std::map<std::string, bool> here;
    for (const Joint& joint : assembly.joints) {
      here[std::string(word_of(joint.kind))] = true;
      if (!joint.tenon) continue;
      if (joint.tenon->each.size() > 1) here["divided tenon"] = true;
      if (joint.tenon->haunch_depth > Length()) here["haunch"] = true;
    }
    for (const Piece& piece : assembly.pieces) {
      here[std::string(word_of(piece.role))] = true;
      if (piece.matter == Matter::board) here["board"] = true;
      for (const Feature& feature : piece.features)
        here[std::string(word_of(feature.kind))] = true;
    }
    for (const auto& [what, seen] : here)
      ++counts_[what];
  }
  void note(const std::string& what) { ++counts_[what]; }

  std::uint64_t of(const std::string& what) const {
    const auto found = counts_.find(what);
    return found == counts_.end() ? 0 : found->second;
  }

 private:
  std::map<std::string, std::uint64_t> counts_;
};

/// A raised panel whose slope begins within the groove, and so stands in its wall.
bool slope_in_groove(const DoorSpec& spec) {
  const auto groove = spec.find("groove_depth");
  const auto short_tongue = [&](const auto& panels) {
    const auto tongue = panels.find("panel.raise.tongue");
    return tongue && groove && *tongue < *groove;
  };
  return short_tongue(spec) || std::any_of(spec.tiers.begin(), spec.tiers.end(), short_tongue);
}

bool gives_panel_thickness(const DoorSpec& spec) {
  const auto gives = [](const auto& panels) { return panels.find("panel.thickness").has_value(); };
  return gives(spec) || std::any_of(spec.tiers.begin(), spec.tiers.end(), gives);
}

/// Faults that this spec cannot be blamed for, as text.
std::string faults_in(const Assembly& assembly, const DoorSpec& spec, Occurrences& seen) {
  std::string wrong;
  for (const Fault& fault : judge(assembly)) {
    const bool thin = fault.kind == FaultKind::thin_panel;
    const bool wedged = fault.kind == FaultKind::shared_wood && slope_in_groove(spec);
    if (wedged || (asked_for(fault.kind) && (!thin || gives_panel_thickness(spec)))) {
      seen.note("asked for");
    } else {
      wrong += fault.what + "\n";
    }
  }
  return wrong;
}

TEST_CASE("a door that can be worked goes together as designed, whatever its spec",
          "[wood][property]") {
  Occurrences seen;
  const Seeds seeds = seeds_for(20'000);
  const Tally tally = run_over(seeds, [&](std::uint64_t seed, std::string& wrong) {
    const DoorSpec spec = random_door(seed, Keys::some);
    const std::string json = json_of(spec, seed);
    const Trial trial = work(json);
    if (!trial.assembly) return Outcome::refused;
    seen.note(*trial.assembly);
    if (!spec.tiers.empty()) seen.note("tiers apart");
    wrong = faults_in(*trial.assembly, spec, seen);
    for (const std::string& line : disagreements(spec, *trial.assembly))
      wrong += line + "\n";
    if (!wrong.empty()) wrong = json + "\n" + wrong;
    return Outcome::worked;
  });
  require_worked_share(tally, 70);
  if (seeds.count == 1) return;
  const std::array<const char*, 18> kinds{"mortise-and-tenon",
                                          "stub-tenon",
                                          "panel-in-groove",
                                          "panel-in-rebate",
                                          "haunching",
                                          "moulding",
                                          "moulding-mitre",
                                          "divided tenon",
                                          "haunch",
                                          "rebate",
                                          "raise",
                                          "muntin",
                                          "mortise",
                                          "tiers apart",
                                          "board",
                                          "glass",
                                          "bead",
                                          "asked for"};
  for (const char* kind : kinds) {
    INFO(kind);
    CHECK(seen.of(kind) >= seeds.count / 50);
  }
  CHECK(tally.refused >= seeds.count / 200);
}

}  // namespace

}  // namespace haunch::test
