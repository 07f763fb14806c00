// What whoever fixes a run is told once.
#pragma once

#include <vector>

#include "kind.h"

namespace haunch {

struct WallRunPlan;
struct RunSpec;

std::vector<Caution> run_cautions(const WallRunPlan& plan, const RunSpec& spec);

}  // namespace haunch
