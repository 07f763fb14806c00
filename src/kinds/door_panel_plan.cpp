#include <fmt/core.h>

#include <algorithm>
#include <span>

#include "door_plan_steps.h"

namespace haunch {
namespace {

/// The gap at a panel's edge: what its seasons ask for, else the usual one, or less where the
/// groove would not hold the panel's edge.
Length take_gap(DoorLedger& ledger, SizeKey key, Length usual_gap, Length groove_depth,
                const std::optional<SeasonGap>& season) {
  if (season) return ledger.take(key, season->gap, season->why);
  const Length bite = ledger.defaults.least_bite;
  const Length most = std::max(groove_depth - bite, Length());
  return ledger.take(key, std::min(most, usual_gap),
                     most < usual_gap ? fmt::format("what leaves a bite of {}", ledger.say(bite))
                     : panel_kind(ledger.spec) == PanelKind::board
                         ? "board does not move to matter: room to go together"
                         : ledger.usual());
}

void demand_panel_sizes(DoorLedger& ledger, const DoorPlan& plan, const PanelPlan& panel,
                        std::span<const TierPlan> tiers) {
  const Length groove = plan.groove.depth;
  const Length edge = panel.raise ? panel.raise->width : panel.rebated ? groove : Length();
  const Length least = edge * 2;
  for (const TierPlan& tier : tiers) {
    const Strip& sight = tier.sights.front();
    const Length wide = sight.high - sight.low + (groove - panel.gap_at_sides()) * 2;
    const Length high = tier.height.high - tier.height.low + (groove - panel.gap_at_ends()) * 2;
    if (high > least && wide > least) continue;
    ledger.problem({"panel.gap", "panel.raise.width", "opening"},
                   fmt::format("leaves a panel of {} by {}, {}; make {} less, or the leaf larger",
                               ledger.say(wide), ledger.say(high),
                               panel.raise     ? "all of it raise"
                               : panel.rebated ? "all of it rebate"
                                               : "which is none",
                               panel.raise ? "panel.raise.width" : "panel.gap"));
    return;
  }
}

/// Where the panel is held. Silent where the spec is: a panel is left free.
void settle_held(DoorLedger& ledger, PanelPlan& panel) {
  const auto held = ledger.spec.word<HeldAt>("panel.held");
  if (!held) return;
  const HeldAt at = *held;
  ledger.note_shops_word("panel.held");
  panel.held = at == HeldAt::middle                       ? Held::middle
               : at == HeldAt::left || at == HeldAt::foot ? Held::low_edge
                                                          : Held::high_edge;
  if (panel.held == Held::middle) return;
  const bool upright = panel.grain == Grain::upright;
  const bool at_side = at == HeldAt::left || at == HeldAt::right;
  if (upright != at_side)
    ledger.problem({"panel.held"},
                   fmt::format("\"{}\": a panel whose grain stands {} is held at one of its "
                               "long-grain edges; write \"{}\" or \"{}\", or \"middle\"",
                               word_of(at), upright ? "upright" : "level",
                               upright ? "left" : "foot", upright ? "right" : "head"));
}

constexpr Key kRaiseKeys[] = {"panel.raise.width", "panel.raise.tongue", "panel.raise.shoulder",
                              "panel.raise.profile"};

/// A raise without a raised face.
void demand_raised(DoorLedger& ledger) {
  for (const Key key : kRaiseKeys)
    if (ledger.is_own(key))
      ledger.problem({key},
                     "is of a raised panel, but nothing is raised; say which face: \"raised\": "
                     "\"front\", \"back\" or \"both\"");
}

/// Two words of which one was meant.
void demand_one_meaning(DoorLedger& ledger) {
  const Spec& spec = ledger.spec;
  if (!spec.word<Rebate>("panel.raised")) demand_raised(ledger);
  if (spec.word<Rebate>("panel.raised") && spec.word<Rebate>("panel.rebate"))
    ledger.problem({"panel.rebate"}, "a raised panel has no rebate; keep one of the two");
  if (spec.word<Rebate>("panel.raised") && spec.word<Rebate>("panel.flush"))
    ledger.problem({"panel.flush"}, "a panel is raised or flush; keep one of the two");
  if (!spec.word<Rebate>("panel.raised") && spec.word<Rebate>("panel.flush") &&
      spec.word<Rebate>("panel.rebate"))
    ledger.problem({"panel.rebate"}, "\"flush\" says where the rebate is; take this out");
  if (spec.word<Rebate>("panel.flush") && panel_kind(spec) == PanelKind::solid &&
      ledger.is_own("panel.thickness"))
    ledger.problem({"panel.thickness"},
                   "a flush panel is as thick as its groove's place makes it; take this out, or "
                   "write \"rebate\" instead of \"flush\"");
}

/// What lies between the tongue and the frame's two faces. In a groove it stands in the middle, in
/// a rebate it lies on the wall in front.
struct BesideTongue {
  Length front, back;
};

BesideTongue beside_tongue(const DoorPlan& plan, const PanelPlan& panel) {
  const Length tongue = panel.tongue;
  const Length play = plan.edge.rebated() ? Length() : floor_half(plan.groove.width - tongue);
  const Length front = plan.groove.from_face + play;
  return {front, plan.frame.thickness - front - tongue};
}

/// The thickness that brings the raised face level with the frame's, or a little below it.
Length raised_thickness(const DoorLedger& ledger, const DoorPlan& plan, const PanelPlan& panel) {
  const auto [front, back] = beside_tongue(plan, panel);
  const Length tongue = panel.tongue;
  const Length waste = panel.rebate == Rebate::front  ? front
                       : panel.rebate == Rebate::back ? back
                                                      : std::min(front, back) * 2;
  return std::max(floor_multiple(tongue + waste, ledger.defaults.whole),
                  tongue + ledger.defaults.whole);
}

/// Of what is off over the tongue, what comes off the face side.
Length share_in_front(const PanelPlan& panel) {
  const Length waste = panel.thickness - panel.tongue;
  if (panel.rebate == Rebate::both) return floor_half(waste);
  return panel.rebate == Rebate::front ? waste : Length();
}

/// Of what is measured, no remedy changes the thickness.
Length take_thickness(DoorLedger& ledger, const PanelPlan& panel, Length fallback,
                      std::string_view why) {
  return panel.kind == PanelKind::solid ? ledger.take("panel.thickness", fallback, why)
                                        : ledger.settle("panel.thickness", fallback, why);
}

/// What can't be of a raise `depth` deep on its shallowest face.
void demand_slope(DoorLedger& ledger, const RaiseDesign& raise, Length depth) {
  if (raise.tongue >= raise.width)
    ledger.problem({"panel.raise.width", "panel.raise.tongue"},
                   fmt::format("a raise {} wide with a tongue of {} has no slope; make it wider",
                               ledger.say(raise.width), ledger.say(raise.tongue)));
  else if (raise.shoulder >= depth)
    ledger.problem(
        {"panel.raise.shoulder", "panel.thickness"},
        fmt::format("the field stands {} over the tongue, and a shoulder of {} leaves nothing to "
                    "slope; make the shoulder less",
                    ledger.say(depth), ledger.say(raise.shoulder)));
  else if (raise.profile == Profile::cove && !cove_can_rise(raise, depth))
    ledger.problem(
        {"panel.raise.width", "panel.raise.tongue", "panel.thickness"},
        fmt::format("a cove {} wide cannot rise {}; make it at least as wide as it is high",
                    ledger.say(raise.width - raise.tongue), ledger.say(depth - raise.shoulder)));
}

void settle_raise(DoorLedger& ledger, const DoorPlan& plan, PanelPlan& panel) {
  panel.rebate = *ledger.spec.word<Rebate>("panel.raised");
  ledger.note_shops_word("panel.raised");
  panel.thickness =
      take_thickness(ledger, panel, raised_thickness(ledger, plan, panel),
                     "so that its field is level with the frame's face, or a little below");
  const Length waste = panel.thickness - panel.tongue;
  if (waste <= Length()) {
    ledger.problem({"panel.thickness"},
                   fmt::format("a raised panel is thicker than its tongue of {}; {} is not",
                               ledger.say(panel.tongue), ledger.say(panel.thickness)));
    return;
  }
  const Length depth = panel.rebate == Rebate::both ? floor_half(waste) : waste;
  RaiseDesign raise;
  raise.profile = ledger.choose<Profile>("panel.raise.profile", Profile::bevel, ledger.usual());
  raise.tongue = ledger.take("panel.raise.tongue", plan.groove.depth,
                             plan.edge.rebated()
                                 ? "as the rebate is deep, so that no slope comes to its edge"
                                 : "as the groove is deep, so that no slope comes to its mouth");
  raise.width =
      ledger.take("panel.raise.width", raise.tongue + ledger.defaults.raise_run, ledger.usual());
  raise.shoulder =
      ledger.take("panel.raise.shoulder",
                  std::min(ledger.defaults.raise_shoulder, floor_half(depth)), ledger.usual());
  demand_slope(ledger, raise, depth);
  panel.raise = raise;
  panel.front_waste = share_in_front(panel);
}

/// A panel rebated so that its face, or both, are level with the frame's.
void settle_flush(DoorLedger& ledger, const DoorPlan& plan, PanelPlan& panel) {
  panel.rebate = *ledger.spec.word<Rebate>("panel.flush");
  ledger.note_shops_word("panel.flush");
  const auto [front, back] = beside_tongue(plan, panel);
  panel.front_waste = panel.rebate == Rebate::back ? Length() : front;
  panel.thickness =
      panel.tongue + panel.front_waste + (panel.rebate == Rebate::front ? Length() : back);
  panel.rebated = panel.thickness > panel.tongue;
  ledger.assume("panel.thickness", panel.thickness, "flush with the frame");
}

/// A board is as thick as it was measured: no two sheets are alike.
void demand_measured_board(DoorLedger& ledger, const PanelPlan& panel) {
  if (panel.kind == PanelKind::board && !ledger.stated("panel.thickness").size)
    ledger.problem({"panel.thickness"},
                   "is missing; a sheet is not as thick as it is called, so measure the board and "
                   "write it");
  if (panel.kind == PanelKind::board && ledger.spec.word<Rebate>("panel.flush"))
    ledger.problem({"panel.flush"},
                   "a board is as thick as it is; write \"rebate\" instead, and set "
                   "groove.from_face so that its face comes level");
  if (panel.kind == PanelKind::solid && ledger.is_own("panel.material"))
    ledger.problem({"panel.material"},
                   "is of panels that are not solid; their wood is \"species\": {\"panel\": …}, "
                   "or write \"kind\": \"board\"");
}

/// What a panel is made of.
void settle_kind(DoorLedger& ledger, PanelPlan& panel) {
  const KeyValues& spec = ledger.spec;
  panel.kind = panel_kind(spec);
  ledger.note_shops_word("panel.kind");
  panel.material = spec.text("panel.material");
  if (is_glass(ledger.spec) && spec.text("panel.material").empty())
    panel.material = panel.kind == PanelKind::glass ? "glass" : "sealed unit";
  if (panel.kind == PanelKind::board && spec.text("panel.material").empty()) {
    panel.material = "board";
    ledger.assume("panel.material", panel.material, "not told which");
  }
  demand_measured_board(ledger, panel);
}

/// A panel that is not raised: flat, or rebated where it is thicker than the groove is wide.
void settle_flat(DoorLedger& ledger, const DoorPlan& plan, PanelPlan& panel) {
  panel.thickness = take_thickness(ledger, panel, panel.tongue, "flat: as thick as its tongue");
  panel.rebated = panel.thickness > plan.groove.width;
  if (panel.rebated)
    panel.rebate = ledger.choose<Rebate>("panel.rebate", Rebate::back, ledger.usual());
  if (panel.rebated) panel.front_waste = share_in_front(panel);
}

/// What lies in a rebate: a flat panel, or a raised one with its tongue there.
void settle_bedded_panel(DoorLedger& ledger, const DoorPlan& plan, PanelPlan& panel) {
  for (const Key key : std::initializer_list<Key>{"panel.allowance", "panel.flush", "panel.rebate"})
    if (ledger.is_own(key))
      ledger.problem({key}, "a panel that lies in a rebate is flat or raised; take this out");
  const Length width = plan.groove.width;
  const Length half = floor_multiple(floor_half(width), ledger.defaults.whole);
  constexpr std::string_view kWhy = "half of the rebate, the rest for what holds it there";
  if (ledger.spec.word<Rebate>("panel.raised")) {
    panel.tongue = half;
    settle_raise(ledger, plan, panel);
    return;
  }
  demand_raised(ledger);
  panel.thickness = ledger.take("panel.thickness", half, kWhy);
  panel.tongue = panel.thickness;
  if (panel.thickness > width && ledger.clean())
    ledger.problem({"panel.thickness", "edge.width"},
                   fmt::format("a panel of {} stands out of a rebate {} wide; make it thinner",
                               ledger.say(panel.thickness), ledger.say(width)));
}

/// What stands in a groove: its tongue, and what lies over it. False where there is no tongue.
bool settle_grooved_panel(DoorLedger& ledger, const DoorPlan& plan, PanelPlan& panel) {
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
    return false;
  }
  if (ledger.spec.word<Rebate>("panel.raised"))
    settle_raise(ledger, plan, panel);
  else if (ledger.spec.word<Rebate>("panel.flush"))
    settle_flush(ledger, plan, panel);
  else
    settle_flat(ledger, plan, panel);
  return true;
}

/// The panels of `tiers`, all alike.
PanelPlan settle_alike(DoorLedger& ledger, const DoorPlan& plan, std::span<const TierPlan> tiers,
                       const SeasonGaps& gaps) {
  PanelPlan panel;
  const GrooveDesign& groove = plan.groove;
  settle_kind(ledger, panel);
  demand_glass_keys(ledger, panel);
  if (is_glass(ledger.spec)) {
    settle_glass(ledger, plan, panel, tiers);
    return panel;
  }
  if (plan.edge.rebated())
    settle_bedded_panel(ledger, plan, panel);
  else if (!settle_grooved_panel(ledger, plan, panel))
    return panel;
  panel.grain = ledger.choose<Grain>("panel.grain", Grain::upright, ledger.usual());
  const bool board = panel.kind == PanelKind::board;
  const DoorDefaults& usual = ledger.defaults;
  panel.gap_across =
      take_gap(ledger, "panel.gap.across_grain", board ? usual.board_gap : usual.gap_across,
               groove.depth, gaps.across);
  panel.gap_along = take_gap(ledger, "panel.gap.along_grain",
                             board ? usual.board_gap : usual.gap_along, groove.depth, gaps.along);
  settle_held(ledger, panel);
  if (!plan.edge.rebated()) demand_one_meaning(ledger);
  demand_panel_sizes(ledger, plan, panel, tiers);
  return panel;
}

/// What is said of all panels' raise, though no tier is raised.
void demand_use_in_a_tier(DoorLedger& ledger, const DoorPlan& plan) {
  const bool raised = std::any_of(plan.panels.begin(), plan.panels.end(),
                                  [](const PanelPlan& panel) { return panel.raise.has_value(); });
  if (!raised) demand_raised(ledger);
}

}  // namespace

/// As wide as the thinnest board and its allowance, so that it need not be rebated; none where no
/// board is so thin that the frame can bear it.
std::optional<Reasoned> groove_for_board(const DoorLedger& ledger, const FramePlan& frame) {
  std::optional<Reasoned> found;
  for (std::size_t i = 0; i < std::max<std::size_t>(ledger.spec.tiers.size(), 1); ++i) {
    const KeyValues panel =
        ledger.spec.tiers.empty() ? KeyValues(ledger.spec) : panels_of_tier(ledger.spec, i);
    if (panel_kind(panel) != PanelKind::board || !panel.size("panel.thickness")) continue;
    const Length groove = *panel.size("panel.thickness") +
                          panel.size("panel.allowance").value_or(ledger.defaults.panel_allowance);
    if (groove * 10 > frame.thickness * 4 || (found && found->size <= groove)) continue;
    found = {groove, fmt::format("the board's {} and its allowance",
                                 ledger.say(*panel.size("panel.thickness")))};
  }
  return found;
}

void settle_panels(DoorLedger& ledger, DoorPlan& plan, const std::vector<SeasonGaps>& gaps) {
  const std::span<const TierPlan> tiers = plan.frame.tiers;
  const auto gaps_of = [&](std::size_t tier) {
    return gaps.empty() ? SeasonGaps() : gaps[std::min(tier, gaps.size() - 1)];
  };
  if (ledger.spec.tiers.empty()) {
    plan.panels.assign(tiers.size(), settle_alike(ledger, plan, tiers, gaps_of(0)));
    return;
  }
  for (std::size_t i = 0; i < tiers.size(); ++i) {
    ledger.enter_tier(i);
    plan.panels.push_back(settle_alike(ledger, plan, tiers.subspan(i, 1), gaps_of(i)));
  }
  ledger.leave_tiers();
  if (ledger.clean()) demand_use_in_a_tier(ledger, plan);
}

}  // namespace haunch
