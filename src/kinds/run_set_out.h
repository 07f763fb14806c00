// From a run's settled sizes to its wood.
#pragma once

#include "haunch/wood.h"
#include "run_plan.h"
#include "run_work.h"

namespace haunch {

/// The cabinets where they stand, as groups under their ids ("b1", "b1/case") and what is made
/// between them and beside them. Its zero is the lower left corner of its
/// wood, at the front of its deepest case, on the level of the floor's highest point.
Assembly set_out_run(const WallRunPlan& plan, const RunSpec& spec);

/// Where that zero is: along the wall from its left end where that is shortest, above the floor's
/// highest point, and behind the front of the deepest case.
Triple zero_of(const WallRunPlan& plan, const RunSpec& spec);

/// The walls, and what is put in gaps, where they stand beside that wood.
std::vector<Boundary> boundaries_of(const WallRunPlan& plan, const RunSpec& spec);

/// The wall and its ends, where they stand by that wood.
WallPlanes planes_of(const WallRunPlan& plan, const RunSpec& spec);

}  // namespace haunch
