// Hinges and locks let in to the stiles of a leaf.
#pragma once

#include "door_plan.h"

namespace haunch {

/// Cuts the recesses of `fittings` in two stiles whose face edges look at each other.
void let_in(Assembly& assembly, std::size_t left_stile, std::size_t right_stile,
            const FittingsPlan& fittings);

}  // namespace haunch
