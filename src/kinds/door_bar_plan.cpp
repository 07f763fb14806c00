#include <fmt/core.h>

#include <algorithm>

#include "door_plan_steps.h"

namespace haunch {
namespace {

constexpr Key kOfBars[] = {"panel.bars.width", "panel.bars.rebate", "panel.bars.tenon_depth",
                           "panel.bars.through"};

std::size_t panes(const DoorLedger& ledger, Key key) {
  return static_cast<std::size_t>(ledger.spec.count(key).value_or(1));
}

/// What is said of bars where no panes are asked for.
void refuse_without_bars(DoorLedger& ledger) {
  for (const Key key : kOfBars)
    if (ledger.is_own(key))
      return ledger.problem({key},
                            "is of glazing bars, and this glass is one pane; write such as "
                            "\"panes\": {\"across\": 2, \"up\": 3}, or take it out");
}

/// What the trade has otherwise, or what is not set out.
void refuse_beside_bars(DoorLedger& ledger, const DoorPlan& plan, std::span<const TierPlan> tiers) {
  const Key panes =
      ledger.stated("panel.panes.up").stated ? Key("panel.panes.up") : Key("panel.panes.across");
  if (plan.edge.moulded())
    ledger.problem({panes, "edge.kind"},
                   fmt::format("glazing bars are not moulded, and would stand plain between "
                               "mouldings; take {} edges out, or the panes",
                               word_of(plan.edge.kind)));
  const bool at_top = &tiers.front() == &plan.frame.tiers.front();
  if (at_top && (plan.frame.arch || plan.frame.head))
    ledger.problem({panes, "arch"},
                   "glazing bars under an arch end on its curve, which is not set out; give the "
                   "top tier one pane, or take the arch out");
}

/// The widest cutter that goes into a mortise as long as a bar's tongue is wide, but none wider
/// than the groove; zero where none does.
Length cutter_for(const DoorLedger& ledger, Length longest, Length groove) {
  Length widest;
  for (const Length cutter : ledger.cutters())
    if (cutter <= std::min(longest, groove)) widest = std::max(widest, cutter);
  return widest;
}

/// The deepest tenon that leaves wood behind it wherever bars enter, and between two that meet.
Length deepest_in_members(const DoorLedger& ledger, const DoorPlan& plan, const BarDesign& bars,
                          std::span<const TierPlan> tiers) {
  const FramePlan& frame = plan.frame;
  const Length behind = ledger.defaults.left_behind_mortise;
  Length room = frame.narrow_stile() - behind;
  const auto meet_in = [&](Length width) { room = std::min(room, floor_half(width - behind)); };
  for (const TierPlan& tier : tiers) {
    const auto above = static_cast<std::size_t>(&tier - frame.tiers.data());
    if (bars.up > 1 && tier.has_muntins()) meet_in(frame.muntin_width);
    for (const std::size_t rail : {above, above + 1})
      if (bars.across > 1 && frame.is_end_rail(rail))
        room = std::min(room, frame.rails[rail].width - behind);
      else if (bars.across > 1)
        meet_in(frame.rails[rail].width);
  }
  return floor_multiple(room - ledger.defaults.bottom_clearance, ledger.defaults.whole);
}

Length take_bar_tenon(DoorLedger& ledger, const DoorPlan& plan, const GlassDesign& glass,
                      const BarDesign& bars, std::span<const TierPlan> tiers) {
  const Length usual = glass.rebate + ledger.pick(12'000, 1, 2);
  const Length most = deepest_in_members(ledger, plan, bars, tiers);
  if (most >= usual || most <= glass.rebate)
    return ledger.take("panel.bars.tenon_depth", usual,
                       "12 mm, 1/2 in, past the bottom of the rebate");
  return ledger.take("panel.bars.tenon_depth", most,
                     "what leaves 5 mm, 3/16 in, behind it and between two that meet");
}

/// In line with the groove's front wall on all members about the light.
void settle_bar_tenons(DoorLedger& ledger, const DoorPlan& plan, const GlassDesign& glass,
                       BarDesign& bars, std::span<const TierPlan> tiers) {
  MortiseDesign& mortise = bars.mortise;
  TenonDesign& tenon = bars.tenon;
  const Length fit = plan.join.fit_allowance;
  const Length longest = bars.tongue() + ledger.defaults.edge_clearance * 2;
  const Length behind_front = plan.frame.thickness - glass.front;
  mortise.width =
      cutter_for(ledger, longest, plan.edge.rebated() ? behind_front : plan.groove.width);
  if (mortise.width <= fit)
    return ledger.problem({"panel.bars.width", "panel.bars.rebate"},
                          fmt::format("the tongue of {} between a bar's rebates wants a mortise "
                                      "{} long, and there is no cutter so narrow; make the bar "
                                      "wider",
                                      ledger.say(bars.tongue()), ledger.say(longest)));
  mortise.from_face = glass.front;
  mortise.edge_clearance = ledger.defaults.edge_clearance;
  mortise.bottom_clearance = ledger.defaults.bottom_clearance;
  tenon.thickness = mortise.width - fit;
  tenon.from_face = mortise.from_face + floor_half(fit);
  tenon.layout.tenons = {{bars.rebate, bars.width - bars.rebate}};
  tenon.depth = take_bar_tenon(ledger, plan, glass, bars, tiers);
  if (tenon.depth <= glass.rebate)
    ledger.problem({"panel.bars.tenon_depth", "panel.glass.rebate"},
                   fmt::format("a tenon of {} from the sight edge ends in the rebate, {} deep; "
                               "make it more",
                               ledger.say(tenon.depth), ledger.say(glass.rebate)));
  if (mortise.from_face + mortise.width >= plan.frame.thickness)
    ledger.problem({"groove.from_face", "groove.width"},
                   "leaves no wood behind the mortises of glazing bars; make it less");
}

void demand_bars(DoorLedger& ledger, const GlassDesign& glass, const BarDesign& bars) {
  if (bars.tongue() <= Length())
    ledger.problem({"panel.bars.rebate", "panel.bars.width"},
                   fmt::format("two rebates of {} leave nothing of a bar {} wide; make the bar "
                               "wider, or them less deep",
                               ledger.say(bars.rebate), ledger.say(bars.width)));
  if (bars.rebate <= glass.edge_clearance)
    ledger.problem({"panel.bars.rebate", "panel.glass.edge_clearance"},
                   fmt::format("a rebate of {} with an edge clearance of {} leaves no glass behind "
                               "the bar's edge; make the rebate deeper",
                               ledger.say(bars.rebate), ledger.say(glass.edge_clearance)));
}

void demand_panes(DoorLedger& ledger, const BarDesign& bars, std::span<const TierPlan> tiers) {
  const auto demand = [&](Key key, const Strip& whole, std::size_t panes) {
    const auto number = static_cast<std::int64_t>(panes);
    const Length sight = floor_divide(whole.high - whole.low - bars.width * (number - 1), number);
    if (number == 1 || sight >= bars.width) return;
    ledger.problem({key, "panel.bars.width"},
                   fmt::format("{} panes in a light of {} would be {} each, less than the bars "
                               "between them, {}; give fewer",
                               panes, ledger.say(whole.high - whole.low),
                               ledger.say(std::max(sight, Length())), ledger.say(bars.width)));
  };
  for (const TierPlan& tier : tiers) {
    demand("panel.panes.across", tier.sights.front(), bars.across);
    demand("panel.panes.up", tier.height, bars.up);
  }
}

}  // namespace

void settle_bars(DoorLedger& ledger, const DoorPlan& plan, GlassDesign& glass,
                 std::span<const TierPlan> tiers) {
  BarDesign bars;
  bars.across = panes(ledger, "panel.panes.across");
  bars.up = panes(ledger, "panel.panes.up");
  if (bars.across == 1 && bars.up == 1) return refuse_without_bars(ledger);
  refuse_beside_bars(ledger, plan, tiers);
  if (!ledger.clean()) return;
  bars.front = glass.front;
  bars.rebate = ledger.take("panel.bars.rebate", glass.rebate,
                            "as the frame's: one cutter, beads as wide all round");
  bars.width = ledger.take("panel.bars.width", bars.rebate * 2 + ledger.pick(8'000, 3, 8),
                           "both rebates, and 8 mm, 3/8 in, between them (trade practice)");
  if (bars.across > 1 && bars.up > 1)
    bars.upright_through =
        ledger.choose<Grain>("panel.bars.through", Grain::upright,
                             "uprights keep their face (trade practice)") == Grain::upright;
  bars.lap_from_face = std::max(floor_half(plan.frame.thickness), bars.front);
  bars.lap_play = floor_half(plan.join.fit_allowance);
  demand_bars(ledger, glass, bars);
  if (ledger.clean()) demand_panes(ledger, bars, tiers);
  if (ledger.clean()) settle_bar_tenons(ledger, plan, glass, bars, tiers);
  glass.bars = bars;
}

}  // namespace haunch
