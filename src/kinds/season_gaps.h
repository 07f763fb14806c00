// The gaps at panel edges that the spec leaves open, chosen by what the wood does.
#pragma once

#include "door_defaults.h"
#include "door_plan.h"
#include "season.h"

namespace haunch {

/// Which gaps must differ from those of `plan`, as worked with the usual ones and `built` by it:
/// more where a panel would bottom at its wettest, less where its edge would stand too little in
/// its groove at its driest. Room comes first, as far as the groove holds the panel when built. In
/// whole steps of 0.5 mm or 1/64 in. One for all panels, or with `by_tier` one for each tier from
/// the top.
std::vector<SeasonGaps> gaps_for(const DoorPlan& plan, const Assembly& built, const Season& season,
                                 const DoorDefaults& defaults, bool by_tier);

}  // namespace haunch
