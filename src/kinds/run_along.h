// A run's wall, its floor and what stands along it, for those who show it.
#pragma once

#include "along_wall.h"
#include "run_plan.h"

namespace haunch {

/// Of a plan without problems.
AlongWall along_wall_of(const WallRunPlan& plan, const RunSpec& spec);

}  // namespace haunch
