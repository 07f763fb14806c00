// The chains of a cabinet's sizes: across, down and from front to back, each adding up to the
// whole.
#pragma once

#include <vector>

#include "cabinet_plan.h"
#include "kind.h"

namespace haunch {

std::vector<Chain> chains_of(const CabinetPlan& plan);

}  // namespace haunch
