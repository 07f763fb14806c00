// Setting out a planned door: its pieces, where they lie, and what is cut into them.
#pragma once

#include "door_plan.h"
#include "haunch/wood.h"

namespace haunch {

Assembly set_out_door(const DoorPlan& plan);

/// Both leaves of a pair as they stand in their opening.
Assembly set_out_pair(const DoorPlan& left, const DoorPlan& right);

}  // namespace haunch
