// The machines of a shop file.
#pragma once

#include <vector>

#include "machine.h"
#include "spec.h"

namespace haunch {

/// From the items of "machines", in their order.
std::vector<Machine> machines_of(const std::vector<KeyValues>& items);

}  // namespace haunch
