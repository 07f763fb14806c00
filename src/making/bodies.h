// The wood that a feature takes away, piece by piece.
#pragma once

#include <vector>

#include "haunch/wood.h"

namespace haunch {

/// Its cuts, and of what slopes or curves the least box round each.
std::vector<Box> bodies_of(const Feature& feature);

}  // namespace haunch
