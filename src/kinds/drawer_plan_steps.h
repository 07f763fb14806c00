// The steps of planning a drawer that have files of their own. Each settles sizes in the ledger's
// book, or tells there what cannot be.
#pragma once

#include "drawer_plan.h"
#include "ledger.h"
#include "season_spec.h"

namespace haunch {

/// Of the wood of a role.
SeasonalPart seasonal_part(const Spec& spec, Role role);

/// How the box stands in its opening, from side to side, up, and to the back.
std::vector<Chain> chains_of(const DrawerPlan& plan);

/// The bottom, once the sides are settled.
void settle_bottom(Ledger& ledger, DrawerPlan& plan);
void doubt_bottom(Ledger& ledger, const DrawerPlan& plan);

/// How front and back meet the sides, once all else is.
void settle_corners(Ledger& ledger, DrawerPlan& plan);

/// What the sides meet in front or at the back, from their lower edge.
Strip edges_at(const DrawerPlan& plan, bool in_front);

}  // namespace haunch
