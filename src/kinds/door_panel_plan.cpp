#include <fmt/format.h>

#include <algorithm>

#include "door_plan_steps.h"

namespace haunch {
namespace {

/// The gap at a panel's edge: what its seasons ask for, else the usual one, or less where the
/// groove would not hold the panel's edge.
Length take_gap(DoorLedger& ledger, std::string_view key, Length usual_gap, Length groove_depth,
                const std::optional<SeasonGap>& season) {
  if (season) return ledger.take(key, season->gap, season->why);
  const Length bite = ledger.defaults.least_bite;
  const Length most = std::max(groove_depth - bite, Length());
  return ledger.take(key, std::min(most, usual_gap),
                     most < usual_gap ? fmt::format("what leaves a bite of {}", ledger.say(bite))
                                      : ledger.usual());
}

void demand_panel_sizes(DoorLedger& ledger, const DoorPlan& plan) {
  const PanelPlan& panel = plan.panel;
  const Length groove = plan.groove.depth;
  const Length least = panel.rebated ? groove * 2 : Length();
  for (const TierPlan& tier : plan.frame.tiers) {
    const Strip& sight = tier.sights.front();
    const Length wide = sight.high - sight.low + (groove - panel.gap_at_sides()) * 2;
    const Length high = tier.height.high - tier.height.low + (groove - panel.gap_at_ends()) * 2;
    if (high > least && wide > least) continue;
    ledger.problem(
        {"panel.gap", "opening"},
        fmt::format("leaves a panel of {} by {}, {}; make panel.gap less, or the leaf larger",
                    ledger.say(wide), ledger.say(high),
                    panel.rebated ? "all of it rebate" : "which is none"));
    return;
  }
}

/// Where the panel is held. Silent where the spec is: a panel is left free, or pinned in the
/// middle.
void settle_held(DoorLedger& ledger, PanelPlan& panel) {
  const auto& held = ledger.spec.held;
  const HeldAt at = held.word.value_or(HeldAt::middle);
  if (held.by_shop) ledger.note_shop("panel.held", std::string(held_word(at)));
  if (at == HeldAt::middle) return;
  const bool upright = panel.grain == Grain::upright;
  const bool at_side = at == HeldAt::left || at == HeldAt::right;
  if (upright != at_side)
    ledger.problem({"panel.held"},
                   fmt::format("\"{}\": a panel whose grain stands {} is held at one of its "
                               "long-grain edges; write \"{}\" or \"{}\", or \"middle\"",
                               held_word(at), upright ? "upright" : "level",
                               upright ? "left" : "foot", upright ? "right" : "head"));
  panel.held = at == HeldAt::left || at == HeldAt::foot ? Held::low_edge : Held::high_edge;
}

}  // namespace

void settle_panels(DoorLedger& ledger, DoorPlan& plan, const SeasonGaps& gaps) {
  PanelPlan& panel = plan.panel;
  const GrooveDesign& groove = plan.groove;
  panel.allowance = ledger.take("panel.allowance", ledger.defaults.panel_allowance,
                                "so that the panel slides in its groove");
  panel.tongue = groove.width - panel.allowance;
  if (panel.tongue <= Length()) {
    ledger.problem(
        {"panel.allowance", "groove.width", "mortise.width"},
        fmt::format(
            "a panel allowance of {} leaves nothing of a tongue in a groove of {}; make it less",
            ledger.say(panel.allowance), ledger.say(groove.width)));
    return;
  }
  panel.thickness = ledger.take("panel.thickness", panel.tongue, "flat: as thick as its tongue");
  panel.rebated = panel.thickness > groove.width;
  if (panel.rebated)
    panel.rebate =
        ledger.choose(ledger.spec.rebate, "panel.rebate", Rebate::back, {"back", "front", "both"});
  panel.grain =
      ledger.choose(ledger.spec.grain, "panel.grain", Grain::upright, {"upright", "level"});
  panel.gap_across = take_gap(ledger, "panel.gap.across_grain", ledger.defaults.gap_across,
                              groove.depth, gaps.across);
  panel.gap_along = take_gap(ledger, "panel.gap.along_grain", ledger.defaults.gap_along,
                             groove.depth, gaps.along);
  settle_held(ledger, panel);
  demand_panel_sizes(ledger, plan);
}

}  // namespace haunch
