// The program's checks and the second opinion share no line; over random doors, whole and spoiled,
// they must agree.

#include <algorithm>

#include "catch.h"
#include "checks.h"
#include "property_runs.h"
#include "random_spec.h"
#include "wood_oracle.h"

namespace haunch::test {

namespace {

using Findings = std::vector<Finding>;

bool fails(const Findings& findings, std::string_view check) {
  return std::any_of(findings.begin(), findings.end(), [&](const Finding& each) {
    return each.status == Status::fail && each.rule->check == check;
  });
}

bool finds(const Findings& findings, std::string_view check) {
  return std::any_of(findings.begin(), findings.end(), [&](const Finding& each) {
    return each.status != Status::ok && each.rule->check == check;
  });
}

bool fails_at_all(const Findings& findings) {
  return std::any_of(findings.begin(), findings.end(),
                     [](const Finding& each) { return each.status == Status::fail; });
}

/// What the checks must say of a fault.
bool seen_by_checks(const Fault& fault, const Findings& findings) {
  switch (fault.kind) {
    case FaultKind::shared_wood:
    case FaultKind::meeting:
      return fails(findings, "fouling");
    case FaultKind::proud:
      return finds(findings, "panel-flush");
    case FaultKind::hole:
      return fails(findings, "face-closed");
    case FaultKind::undivided:
      return fails(findings, "mortise-between");
    case FaultKind::no_bite:
      return fails(findings, "panel-bite");
    case FaultKind::thin_panel:
      return fails(findings, "panel-play");
    default:
      return fails_at_all(findings);
  }
}

/// The design figure that a check of a joint's fit measures; empty for other checks.
std::optional<Length> design_of(const Assembly& assembly, const Finding& finding) {
  if (!finding.joint) return std::nullopt;
  const Clearances& design = assembly.joints[*finding.joint].design;
  const std::string_view check = finding.rule->check;
  if (check == "cheek-fit" || check == "stub-fit" || check == "panel-play") return design.cheeks;
  if (check == "edge-fit") return design.edges;
  if (check == "bottom-clearance" || check == "panel-room") return design.bottom;
  if (check == "panel-bite") return design.bite;
  if (check == "shoulder-seat") return Length();
  return std::nullopt;
}

std::string unlike_design(const Assembly& assembly, const Findings& findings) {
  std::string wrong;
  for (const Finding& each : findings) {
    const auto design = design_of(assembly, each);
    if (!design || *design == each.value) continue;
    wrong += std::string(each.rule->check) + " of " + joint_id(*each.joint) + " measured " +
             decimal(each.value, Unit::mm) + " mm, designed " + decimal(*design, Unit::mm) +
             " mm\n";
  }
  return wrong;
}

TEST_CASE("what the second opinion finds in a door, the checks find", "[wood][property]") {
  std::uint64_t sound = 0;
  const Tally tally = run_over(seeds_for(4'000), [&](std::uint64_t seed, std::string& wrong) {
    const DoorSpec spec = random_door(seed, Keys::some);
    const std::string json = to_json(spec, {spec.unit, seed, false, true});
    const Trial trial = work(json);
    if (!trial.assembly) return Outcome::refused;
    const Findings findings = check_assembly(*trial.assembly, spec.unit);
    const auto faults = judge(*trial.assembly);
    for (const Fault& fault : faults) {
      if (!seen_by_checks(fault, findings)) wrong += "not failed: " + fault.what + "\n";
    }
    if (faults.empty()) {
      ++sound;
      wrong += unlike_design(*trial.assembly, findings);
      if (fails(findings, "fouling") || fails(findings, "face-closed") ||
          fails(findings, "joint-shut-face") || fails(findings, "joint-shut-back")) {
        wrong += "a sound door fails\n";
      }
    }
    if (!wrong.empty()) wrong = json + "\n" + wrong;
    return Outcome::worked;
  });
  require_worked_share(tally, 70);
  if (tally.worked > 1) CHECK(sound * 2 > tally.worked);
}

/// One piece moved, or one cut or blank made a little larger or smaller; by a step or by a
/// millimetre.
void spoil(Assembly& door, Dice& dice) {
  const auto any = [&](std::size_t count) {
    return static_cast<std::size_t>(dice.between(0, static_cast<std::int64_t>(count) - 1));
  };
  Length by = dice.chance(50) ? Length::from_steps(1) : Length::from_mm(1);
  if (dice.chance(50)) by = -by;
  Piece& piece = door.pieces[any(door.pieces.size())];
  const std::size_t axis = any(3);
  // Of what only slopes, as a mitred bead, the piece itself.
  const bool boxes = std::any_of(piece.features.begin(), piece.features.end(),
                                 [](const Feature& feature) { return !feature.cuts.empty(); });
  if (!boxes || dice.chance(40)) {
    (dice.chance(50) ? piece.place.origin : piece.blank)[axis] += by;
    return;
  }
  std::size_t which = any(piece.features.size());
  while (piece.features[which].cuts.empty())
    which = any(piece.features.size());
  Feature& feature = piece.features[which];
  Box& cut = feature.cuts[any(feature.cuts.size())];
  Length& bound = (dice.chance(50) ? cut.low : cut.high)[axis];
  bound += by;
}

/// Faults that a dry fit shows, whatever the joints say of themselves.
bool shows_at_dry_fit(FaultKind kind) {
  return kind == FaultKind::shared_wood || kind == FaultKind::hole;
}

TEST_CASE("wood shared or missing in a spoiled door fails its checks too", "[wood][property]") {
  std::uint64_t spoiled = 0;
  const Tally tally = run_over(seeds_for(4'000), [&](std::uint64_t seed, std::string& wrong) {
    const DoorSpec spec = random_door(seed, Keys::all);
    const std::string json = to_json(spec, {spec.unit, seed, false, true});
    Trial trial = work(json);
    if (!trial.assembly) return Outcome::refused;
    Dice dice(seed);
    spoil(*trial.assembly, dice);
    const Findings findings = check_assembly(*trial.assembly, spec.unit);
    for (const Fault& fault : judge(*trial.assembly)) {
      if (!shows_at_dry_fit(fault.kind)) continue;
      ++spoiled;
      if (!seen_by_checks(fault, findings)) wrong += "not failed: " + fault.what + "\n";
    }
    if (!wrong.empty()) wrong = json + "\n" + wrong;
    return Outcome::worked;
  });
  require_worked_share(tally, 70);
  if (tally.worked > 1) CHECK(spoiled * 10 > tally.worked);
}

}  // namespace

}  // namespace haunch::test
