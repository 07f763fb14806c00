// The rods of a run: what is struck along its wall, up it and away from it; then those of each
// cabinet by itself, from its own zero.
#pragma once

#include <vector>

#include "along_wall.h"
#include "report.h"
#include "rod.h"

namespace haunch {

/// Their pieces are by index into the run's.
std::vector<Rod> run_rods(const Assembly& wood, const AlongWall& wall, Unit unit);

}  // namespace haunch
