// What is told of a run in one line: along the wall at each height, and up from the floor.
#pragma once

#include <vector>

#include "kind.h"

namespace haunch {

struct WallRunPlan;
struct RunSpec;

/// Along the wall at each height that was measured, each adding up to the wall there; where the
/// floor was levelled, up from it at both sides of each cabinet.
std::vector<Chain> chains_of(const WallRunPlan& plan, const RunSpec& spec);

}  // namespace haunch
