// What whoever makes or fixes a cabinet is to be told once.
#pragma once

#include <vector>

#include "cabinet_plan.h"
#include "kind.h"

namespace haunch {

std::vector<Caution> cabinet_cautions(const CabinetPlan& plan);

}  // namespace haunch
