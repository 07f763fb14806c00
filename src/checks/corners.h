// Checks of inside corners: the wood, fronts and handles of the run that goes through there against
// those of the one that begins beside it.
#pragma once

#include <vector>

#include "family.h"
#include "opened.h"
#include "run_work.h"

namespace haunch {

/// Both at rest, then each front of either on its way against all that is shut of the other.
/// `fronts`: those of the bench.
void check_corners(Bench& bench, const std::vector<OpenedFront>& fronts,
                   const Surroundings& around);

std::vector<const Rule*> rules_of_corners();

}  // namespace haunch
