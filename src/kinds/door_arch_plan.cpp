#include <fmt/format.h>

#include "door_plan_steps.h"

namespace haunch {
namespace {

constexpr int kMostChords = 400;

/// The rise that the spec says, or that its shape makes.
Length rise_of(DoorLedger& ledger, const Arch& arch) {
  const Stated& stated = ledger.stated("arch.rise");
  const ArchShape shape = ledger.spec.arch_shape.word.value_or(ArchShape::segmental);
  if (shape == ArchShape::semicircular) {
    if (stated.size && !stated.by_shop)
      ledger.problem({"arch.rise"},
                     "a semicircle rises by half its span; take it out, or the shape");
    return floor_half(arch.span);
  }
  if (!stated.size)
    ledger.problem({"arch.tolerance", "arch.rise"},
                   "the arch's \"rise\" is missing; give \"arch\": {\"rise\": …}, or {\"shape\": "
                   "\"semicircular\"}");
  return ledger.take("arch.rise", Length::from_steps(1), "");
}

}  // namespace

void settle_arch(DoorLedger& ledger, FramePlan& frame) {
  const bool asked = ledger.stated("arch.rise").size || ledger.stated("arch.tolerance").size ||
                     ledger.spec.arch_shape.word;
  if (!asked) return;
  Arch arch;
  arch.left = frame.stile_left;
  arch.span = frame.width - frame.stile_left - frame.stile_right;
  arch.rise = rise_of(ledger, arch);
  arch.tolerance =
      ledger.take("arch.tolerance", ledger.defaults.arch_tolerance, "closer than a saw follows");
  if (arch.rise > floor_half(arch.span))
    ledger.problem({"arch.rise"},
                   fmt::format("{} is more than half the span of {}; make it at most {}",
                               ledger.say(arch.rise), ledger.say(arch.span),
                               ledger.say(floor_half(arch.span))));
  else if (chords_of(arch) > kMostChords)
    ledger.problem({"arch.tolerance", "arch.rise"},
                   fmt::format("makes {} chords of the arch; the most is {}: make it more",
                               chords_of(arch), kMostChords));
  frame.arch = arch;
}

void demand_one_panel_under_arch(DoorLedger& ledger, const FramePlan& frame) {
  if (frame.arch && frame.tiers.front().has_muntins())
    ledger.problem({"panels", "arch.rise"},
                   "an arch goes over one panel; have one in the top tier, or take the arch out");
}

Length groove_at_shoulder(const DoorPlan& plan) {
  if (!plan.frame.arch) return plan.groove.depth;
  const Arch& arch = *plan.frame.arch;
  const auto line =
      arch_line(arch, plan.groove.depth, arch.left, arch.left + arch.span, Heights::up);
  return std::max(line.front().v, line.back().v) - arch.springing;
}

void demand_flat_panel_under_arch(DoorLedger& ledger, const DoorPlan& plan) {
  if (plan.frame.arch && plan.panels.front().raise)
    ledger.problem({"panel.raised", "arch.rise"},
                   "a raised panel under an arch is not set out; take one of the two out");
}

}  // namespace haunch
