// Random doors whose corners, middle rails and muntins are dowelled, lapped or mitred, each judged
// by a second opinion on its wood. HAUNCH_TEST_SEED=n runs the one with that seed again.
#include <array>
#include <map>
#include <set>

#include "catch.h"
#include "corner_oracle.h"
#include "property_runs.h"
#include "random_spec.h"

namespace haunch::test {
namespace {

void set(DoorSpec& spec, std::string_view key, Length length) {
  for (SpecLength& each : spec.lengths)
    if (each.key == key) each.length = length;
}

std::string_view one_of(Dice& dice, const std::vector<std::string_view>& words) {
  return words[static_cast<std::size_t>(
      dice.between(0, static_cast<std::int64_t>(words.size()) - 1))];
}

/// What a door's corners, middle rails and muntins are joined by.
struct Joints {
  std::string_view corner, middle, muntin;

  std::string json() const {
    return R"("joint": {"corner": ")" + std::string(corner) + R"(", "middle": ")" +
           std::string(middle) + R"(", "muntin": ")" + std::string(muntin) + R"("})";
  }
};

Joints random_joints(Dice& dice) {
  return {one_of(dice, {"dowel", "half-lap", "mitre", "haunched"}),
          one_of(dice, {"dowel", "half-lap", "haunched"}), one_of(dice, {"dowel", "haunched"})};
}

/// A sane door, made fit for its joints: mitred members are of one width.
DoorSpec door_for(const Joints& joints, std::uint64_t seed) {
  DoorSpec spec = random_door(seed, Keys::all);
  if (joints.corner != "mitre" || spec.rails.empty()) return spec;
  const Length width = spec.rails.front().width;
  spec.rails.back().width = width;
  for (const std::string_view key : {"stile_width", "stile_width.left", "stile_width.right"})
    set(spec, key, width);
  set(spec, "horn", Length());
  return spec;
}

std::string with_joints(std::string json, const Joints& joints) {
  return json.insert(1, joints.json() + ", ");
}

}  // namespace

TEST_CASE("dowelled, lapped and mitred doors go together as designed", "[wood][property]") {
  std::map<std::string_view, std::uint64_t> seen;
  const Seeds seeds = seeds_for(400);
  const Tally tally = run_over(seeds, [&](std::uint64_t seed, std::string& wrong) {
    Dice dice(seed);
    const Joints joints = random_joints(dice);
    const DoorSpec spec = door_for(joints, seed);
    const std::string json = with_joints(to_json(spec, {spec.unit, seed, false, true}), joints);
    const Trial trial = work(json);
    if (!trial.assembly) return Outcome::refused;
    if (dowels_meet_others(*trial.assembly)) return Outcome::aside;
    std::set<std::string_view> here;
    for (const Joint& joint : trial.assembly->joints)
      here.insert(joint.kind);
    for (const std::string_view kind : here)
      ++seen[kind];
    for (const std::string& fault : corner_faults(*trial.assembly, seed))
      wrong += fault + "\n";
    if (!wrong.empty()) wrong = json + "\n" + wrong;
    return Outcome::worked;
  });
  require_worked_share(tally, 40);
  if (seeds.count == 1) return;
  for (const char* kind : {"dowel", "half-lap", "mitre", "mitre-spline"}) {
    INFO(kind);
    CHECK(seen[kind] >= seeds.count / 10);
  }
}

}  // namespace haunch::test
