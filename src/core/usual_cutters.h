// The widths of cutters and chisels that a shop has where it does not say.
#pragma once

#include <vector>

#include "haunch/length_text.h"

namespace haunch {

/// Rising.
std::vector<Length> usual_cutters(Unit unit);

}  // namespace haunch
