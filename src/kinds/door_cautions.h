// What whoever hangs a leaf is told once, where it applies, with the document that the figures come
// from.
#pragma once

#include <vector>

#include "door_plan.h"

namespace haunch {

/// Of a leaf; of a pair the leaf with the lock.
std::vector<Caution> door_cautions(const Spec& spec, const DoorPlan& plan);

}  // namespace haunch
