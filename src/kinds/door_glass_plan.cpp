#include <fmt/core.h>

#include <algorithm>

#include "door_plan_steps.h"

namespace haunch {
namespace {

/// A piece that a rebate for glass is worked on, and what its other edge has.
struct Rebated {
  Where key;
  std::string name;
  Length width, other_edge;
};

/// How far an arched top comes down over a light and its rebates.
Length taken_by_head(const FramePlan& frame, Length rebate) {
  const ArchedHead& head = *frame.head;
  return frame.height - head.lowest_wood(std::max(head.left_sight - rebate, Length()),
                                         std::min(head.right_sight + rebate, frame.width));
}

/// What a rail's other edge is worked to: that towards another tier, or its outer one.
Length other_edge(const DoorPlan& plan, std::size_t rail, std::size_t tier, Length rebate) {
  if (rail == 0 && plan.frame.head) return taken_by_head(plan.frame, rebate);
  if (plan.frame.is_end_rail(rail)) return plan.frame.rebate_of_rail(rail);
  return plan.edge_depth(rail == tier ? tier - 1 : rail);
}

/// The pieces about a tier.
std::vector<Rebated> pieces_about(const DoorPlan& plan, std::size_t tier, Length rebate) {
  const FramePlan& frame = plan.frame;
  std::vector<Rebated> pieces{{"stile_width", "stile", frame.narrow_stile(), Length()}};
  for (const std::size_t rail : {tier, tier + 1})
    pieces.push_back({{"rail_widths", rail},
                      frame.rails[rail].name,
                      frame.rails[rail].width - frame.arched(rail),
                      other_edge(plan, rail, tier, rebate)});
  if (frame.tiers[tier].has_muntins())
    pieces.push_back({"muntin_width", "muntin", frame.muntin_width, rebate});
  return pieces;
}

void demand_rebate(DoorLedger& ledger, const DoorPlan& plan, std::size_t tier) {
  const Length rebate = plan.glass_rebates[tier];
  if (rebate < plan.groove.depth) {
    ledger.problem({"panel.glass.rebate", "groove_depth"},
                   fmt::format("a rebate of {} does not take in the groove of {}, which runs the "
                               "whole length; make it at least as deep",
                               ledger.say(rebate), ledger.say(plan.groove.depth)));
    return;
  }
  for (const Rebated& piece : pieces_about(plan, tier, rebate))
    if (rebate + piece.other_edge >= piece.width)
      ledger.problem(
          {"panel.glass.rebate", piece.key},
          fmt::format("a rebate of {} leaves nothing of the {}, {} wide; make it less "
                      "deep, or the {} wider",
                      ledger.say(rebate), piece.name, ledger.say(piece.width), piece.name));
}

/// Where the edges are rebated the glass lies in their rebate, and there is one depth only.
Length rebate_of_edges(DoorLedger& ledger, const DoorPlan& plan) {
  const Length depth = plan.groove.depth;
  const KeyValue& stated = ledger.stated("panel.glass.rebate");
  if (stated.by_spec() && *stated.size != depth)
    ledger.problem({"panel.glass.rebate", "edge.depth"},
                   fmt::format("the glass lies in the rebate of the edges, {} deep: write it as "
                               "edge.depth, and take this out",
                               ledger.say(depth)));
  return depth;
}

Length take_rebate(DoorLedger& ledger, const DoorPlan& plan) {
  if (plan.edge.rebated()) return rebate_of_edges(ledger, plan);
  const Length groove = plan.groove.depth;
  if (panel_kind(ledger.spec) == PanelKind::glass)
    return ledger.take("panel.glass.rebate", groove, "as deep as the groove");
  const Length least = ledger.defaults.unit_rebate;
  return ledger.take("panel.glass.rebate", std::max(groove, least),
                     groove >= least ? "as deep as the groove"
                                     : "room for a sealed unit's edge and its setting blocks");
}

}  // namespace

Reasoned usual_edge_depth(const DoorLedger& ledger, const DoorPlan& plan) {
  const DoorDefaults& usual = ledger.defaults;
  bool sealed = false;
  for (std::size_t i = 0; i < std::max<std::size_t>(ledger.spec.tiers.size(), 1); ++i)
    sealed = sealed || panel_kind(ledger.spec.tiers.empty()
                                      ? KeyValues(ledger.spec)
                                      : panels_of_tier(ledger.spec, i)) == PanelKind::sealed_unit;
  if (!plan.edge.rebated() || !sealed || usual.groove_depth >= usual.unit_rebate)
    return {usual.groove_depth, std::string(ledger.usual())};
  return {usual.unit_rebate, "room for a sealed unit's edge and its setting blocks"};
}

void settle_glass_rebates(DoorLedger& ledger, DoorPlan& plan) {
  const std::size_t tiers = plan.frame.tiers.size();
  plan.glass_rebates.assign(tiers, Length());
  if (ledger.spec.tiers.empty()) {
    if (is_glass(ledger.spec)) plan.glass_rebates.assign(tiers, take_rebate(ledger, plan));
  } else {
    for (std::size_t i = 0; i < tiers; ++i) {
      ledger.enter_tier(i);
      if (is_glass(ledger.spec)) plan.glass_rebates[i] = take_rebate(ledger, plan);
    }
    ledger.leave_tiers();
  }
  if (plan.edge.moulded_back() && plan.has_glass())
    ledger.problem({"edge.faces", "panel.kind"},
                   "the rebate for glass is open to the back, and takes the moulding there away; "
                   "write \"front\"");
  for (std::size_t i = 0; i < tiers; ++i)
    if (plan.glass_rebates[i] > Length()) demand_rebate(ledger, plan, i);
}

void demand_glass_keys(DoorLedger& ledger, const PanelPlan& panel) {
  const bool glass = is_glass(ledger.spec);
  const std::vector<Key> of_glass{"panel.glass.rebate",  "panel.glass.edge_clearance",
                                  "panel.glass.bedding", "panel.panes.across",
                                  "panel.panes.up",      "panel.bars.width",
                                  "panel.bars.rebate",   "panel.bars.tenon_depth",
                                  "panel.bars.through"};
  const std::vector<Key> of_wood{
      "panel.gap.across_grain", "panel.gap.along_grain", "panel.allowance",   "panel.rebate",
      "panel.raised",           "panel.flush",           "panel.raise.width", "panel.raise.tongue",
      "panel.raise.shoulder",   "panel.raise.profile",   "panel.grain",       "panel.held"};
  for (const Key key : glass ? of_wood : of_glass) {
    if (!ledger.is_own(key)) continue;
    const std::string kind(word_of(panel.kind));
    ledger.problem(
        {key}, glass
                   ? fmt::format("this panel is {}, which has no such thing; take it out, or "
                                 "write another kind",
                                 kind)
                   : fmt::format("is of glass, and this panel is {}; write \"kind\": \"glass\" or "
                                 "\"sealed-unit\"",
                                 kind));
    return;
  }
}

void settle_glass(DoorLedger& ledger, const DoorPlan& plan, PanelPlan& panel,
                  std::span<const TierPlan> tiers) {
  const auto tier = static_cast<std::size_t>(tiers.data() - plan.frame.tiers.data());
  const Length rebate = plan.glass_rebates[tier];
  const bool sealed = panel.kind == PanelKind::sealed_unit;
  if (!ledger.stated("panel.thickness").size) {
    ledger.problem({"panel.thickness"}, sealed ? "is missing; write how thick the sealed unit is"
                                               : "is missing; write how thick the glass is");
    return;
  }
  GlassDesign glass;
  glass.sealed = sealed;
  glass.material = panel.material;
  glass.front = plan.groove.from_face;
  glass.rebate = rebate;
  glass.thickness = panel.thickness = ledger.settle("panel.thickness", Length(), {});
  glass.edge_clearance = ledger.take(
      "panel.glass.edge_clearance",
      sealed ? ledger.defaults.unit_clearance : ledger.defaults.glass_clearance,
      sealed ? "room for setting blocks" : "room at the glass's edge, as glaziers leave it");
  glass.bedding = ledger.take("panel.glass.bedding", ledger.defaults.bedding,
                              "tape or compound at each face of the glass");
  panel.glass = glass;
  if (glass.front <= Length())
    ledger.problem({"groove.from_face", "panel.kind"},
                   "0 leaves no wood at the face side to bed the glass on; make it more");
  if (glass.bite() <= Length())
    ledger.problem({"panel.glass.edge_clearance", "panel.glass.rebate"},
                   fmt::format("{} of a rebate of {} leaves no glass behind the sight edge; make "
                               "it less",
                               ledger.say(glass.edge_clearance), ledger.say(rebate)));
  if (glass.bead(plan.frame.thickness) <= Length())
    ledger.problem(
        {"panel.thickness", "panel.glass.bedding", "groove.from_face"},
        fmt::format("glass of {}, bedded {} from the face side, leaves no bead in a frame of {}; "
                    "make groove.from_face or panel.glass.bedding less, or the frame thicker",
                    ledger.say(glass.thickness), ledger.say(glass.front),
                    ledger.say(plan.frame.thickness)));
  if (plan.edge.mitred() && plan.groove.from_face + plan.groove.width >= plan.frame.thickness)
    ledger.problem(
        {"groove.width", "groove.from_face", "edge.kind"},
        "a groove that is open to the back leaves no wood there for the shoulders, which "
        "stand past the sight edge; make it narrower, or put it nearer to the face");
  if (ledger.clean()) settle_bars(ledger, plan, *panel.glass, tiers);
}

}  // namespace haunch
