// The joints of a door's ends, each by its kind.
#pragma once

#include "door_plan.h"
#include "end_joint.h"

namespace haunch {

/// What holds an end of a rail in a stile so wide.
EndJoints joints_of_rail(const DoorPlan& plan, std::size_t rail, Length stile);
/// What holds each end of a muntin.
EndJoints joints_of_muntin(const DoorPlan& plan);

}  // namespace haunch
