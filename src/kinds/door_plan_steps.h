// The steps by which a door's sizes are settled. Each rests on what the ones before it put into the
// plan.
#pragma once

#include "door_ledger.h"
#include "door_plan.h"

namespace haunch {

// door_frame_plan.cpp: leaf, stiles, rails, tiers.
void settle_leaf(DoorLedger& ledger, FramePlan& frame);
void settle_rails(DoorLedger& ledger, FramePlan& frame);
void settle_tiers(DoorLedger& ledger, FramePlan& frame);

// door_edge_plan.cpp: how the sight edges are worked.
/// "groove" or "rebate"; and the key of its depth.
std::string_view sunk_word(const DoorPlan& plan);
std::string depth_key(const DoorPlan& plan);
void settle_edge(DoorLedger& ledger, DoorPlan& plan);
/// Of rebated edges: where the rebate lies in the thickness.
void settle_rebate(DoorLedger& ledger, DoorPlan& plan);
/// Of moulded edges, once groove, mortise and tenons are settled.
void demand_room_for_moulding(DoorLedger& ledger, const DoorPlan& plan);
/// A panel that lies in a rebate.
void settle_bedded_panel(DoorLedger& ledger, const DoorPlan& plan, PanelPlan& panel);

// door_fit_plan.cpp: depths, and what goes across the thickness.
void settle_depths(DoorLedger& ledger, DoorPlan& plan);
void settle_fit(DoorLedger& ledger, DoorPlan& plan);
void settle_places(DoorLedger& ledger, DoorPlan& plan);

// door_joint_plan.cpp: which joints, and what is each one's own.
void choose_joints(DoorLedger& ledger, DoorPlan& plan);
void settle_joints(DoorLedger& ledger, DoorPlan& plan);
void settle_ends(DoorLedger& ledger, DoorPlan& plan);
void settle_twins(DoorLedger& ledger, DoorPlan& plan);
void settle_wedges(DoorLedger& ledger, DoorPlan& plan);
void settle_loose_tenons(DoorLedger& ledger, DoorPlan& plan);

// door_tenon_plan.cpp: clearances, and what goes across the width.
void settle_clearances(DoorLedger& ledger, DoorPlan& plan);
void settle_tenons(DoorLedger& ledger, DoorPlan& plan);

// door_fittings_plan.cpp
void settle_fittings(DoorLedger& ledger, DoorPlan& plan);

// door_panel_plan.cpp
void settle_panels(DoorLedger& ledger, DoorPlan& plan, const std::vector<SeasonGaps>& gaps);

}  // namespace haunch
