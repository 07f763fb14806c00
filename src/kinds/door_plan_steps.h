// The steps by which a door's sizes are settled. Each rests on what the ones before it put into the
// plan.
#pragma once

#include <span>

#include "door_ledger.h"
#include "door_plan.h"
#include "usual_joint.h"

namespace haunch {

// door_frame_plan.cpp: leaf, stiles, rails, tiers.
void settle_leaf(DoorLedger& ledger, FramePlan& frame, WhichLeaf leaf);
void settle_rails(DoorLedger& ledger, FramePlan& frame);
void settle_tiers(DoorLedger& ledger, FramePlan& frame);
/// The numbers of panels in tiers, as a message lists them: "2, 1, 1".
std::string tiers_words(const std::vector<int>& across);

// door_meets_plan.cpp: how the leaf meets its opening.
void settle_meets(DoorLedger& ledger, FramePlan& frame);
/// Of a leaf whose opening was measured all round.
void settle_follow(DoorLedger& ledger, const Fit& opening);
/// Of stiles, whose widths are settled, and thickness.
void settle_lip(DoorLedger& ledger, FramePlan& frame);

// door_pair_plan.cpp: the leaves of a pair, as one of them is planned.
void settle_pair(DoorLedger& ledger, FramePlan& frame, WhichLeaf leaf);
/// Of stiles whose sight widths are settled.
void settle_meeting_stiles(DoorLedger& ledger, FramePlan& frame);

// door_arch_plan.cpp: before the rails are placed, and when tiers are known.
void settle_arch(DoorLedger& ledger, FramePlan& frame, Length crown_width);
/// Of rails that are placed.
void demand_wood_under_head(DoorLedger& ledger, const FramePlan& frame);
void demand_one_panel_under_arch(DoorLedger& ledger, const FramePlan& frame);
/// How far what is worked along the arch stands above the top rail's lower edge, up to so far in
/// from its shoulders; up to a size that can be marked. Without an arch nothing.
Length arch_over_end(const DoorLedger& ledger, const DoorPlan& plan, Length in);
/// What an arched top takes of the top rail above holes in the stiles that are so deep, or go right
/// through; up to a size that can be marked. Of its tenons where their mortises are deepest.
Length head_over(const DoorLedger& ledger, const FramePlan& frame, std::optional<Length> depth);
Length head_over_tenons(const DoorLedger& ledger, const DoorPlan& plan);
void refuse_beside_head(DoorLedger& ledger, const DoorPlan& plan);

// door_edge_plan.cpp: how the sight edges are worked.
/// "groove" or "rebate"; and the key of its depth.
std::string_view sunk_word(const DoorPlan& plan);
SizeKey depth_key(const DoorPlan& plan);
void settle_edge(DoorLedger& ledger, DoorPlan& plan);
/// Of rebated edges: where the rebate lies in the thickness.
void settle_rebate(DoorLedger& ledger, DoorPlan& plan);
/// Of moulded edges, once groove, mortise and tenons are settled.
void demand_room_for_moulding(DoorLedger& ledger, const DoorPlan& plan);

// door_fit_plan.cpp: depths, and what goes across the thickness.
void settle_depths(DoorLedger& ledger, DoorPlan& plan);
/// What muntins sink in rails: so much deeper than what stands there, and so far within their
/// width.
struct SunkInRail {
  Length bottom, inset;
};
/// The deepest that muntins can reach, up to `wanted`, in every rail they enter, wood being left
/// behind (up to the groove of the rail's other edge) or between two that meet.
Length deepest_in_rails(const DoorLedger& ledger, const DoorPlan& plan, Length wanted,
                        const SunkInRail& sunk);
void settle_fit(DoorLedger& ledger, DoorPlan& plan);
void settle_places(DoorLedger& ledger, DoorPlan& plan);

// door_joint_plan.cpp: which joints, and what is each one's own.
void choose_joints(DoorLedger& ledger, DoorPlan& plan);
void settle_joints(DoorLedger& ledger, DoorPlan& plan);
void settle_ends(DoorLedger& ledger, DoorPlan& plan);
void settle_twins(DoorLedger& ledger, DoorPlan& plan);
void settle_over(DoorLedger& ledger, DoorPlan& plan);
void settle_wedges(DoorLedger& ledger, DoorPlan& plan);
void settle_loose_tenons(DoorLedger& ledger, DoorPlan& plan);

// door_tenon_plan.cpp: clearances, and what goes across the width.
void settle_clearances(DoorLedger& ledger, DoorPlan& plan);
void settle_tenons(DoorLedger& ledger, DoorPlan& plan);

// door_dowel_plan.cpp
void settle_dowels(DoorLedger& ledger, DoorPlan& plan);

// door_pin_plan.cpp
void settle_pins(DoorLedger& ledger, DoorPlan& plan);

// door_lap_plan.cpp
void settle_laps(DoorLedger& ledger, DoorPlan& plan);

// door_mitre_plan.cpp
void settle_mitres(DoorLedger& ledger, DoorPlan& plan);

// door_fittings_plan.cpp
void settle_fittings(DoorLedger& ledger, DoorPlan& plan);

// door_glass_plan.cpp: how deep rebates for glass are, and what lies in them.
void settle_glass_rebates(DoorLedger& ledger, DoorPlan& plan);
/// How deep what is sunk into the edges usually is: a rebate for sealed units deeper.
Reasoned usual_edge_depth(const DoorLedger& ledger, const DoorPlan& plan);
/// What is said of glass where there is none, or of wood where there is glass.
void demand_glass_keys(DoorLedger& ledger, const PanelPlan& panel);
/// The glass of `tiers`, all alike.
void settle_glass(DoorLedger& ledger, const DoorPlan& plan, PanelPlan& panel,
                  std::span<const TierPlan> tiers);

// door_bar_plan.cpp: glazing bars in the lights of `tiers`, where the spec asks for panes.
void settle_bars(DoorLedger& ledger, const DoorPlan& plan, GlassDesign& glass,
                 std::span<const TierPlan> tiers);

// door_panel_plan.cpp: the groove that panels of board ask for, and the panels.
std::optional<Reasoned> groove_for_board(const DoorLedger& ledger, const FramePlan& frame);
void settle_panels(DoorLedger& ledger, DoorPlan& plan, const std::vector<SeasonGaps>& gaps);

}  // namespace haunch
