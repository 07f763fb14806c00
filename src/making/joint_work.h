// What is worked for joints: mortises, tenons, half-laps, holes for dowels.
#pragma once

#include "making.h"

namespace haunch {

void add_joint_work(Making& making, const Assembly& wood, std::size_t joint);

}  // namespace haunch
