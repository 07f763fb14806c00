// Checks of what stands by the work: walls, and what has its place between cases.
#pragma once

#include <vector>

#include "family.h"
#include "run_work.h"

namespace haunch {

/// Wood and walls at rest, then every front on its way, with its handle.
void check_boundaries(Bench& bench, const Surroundings& around);

std::vector<const Rule*> rules_of_boundaries();

}  // namespace haunch
