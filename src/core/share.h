// Sharing a length out so that the parts add up to the whole.
#pragma once

#include <vector>

#include "haunch/length.h"

namespace haunch {

/// `total` in `parts` (> 0) equal lengths, to the step; odd steps go to the last ones, one each.
std::vector<Length> share_evenly(Length total, std::size_t parts);

}  // namespace haunch
