// Panels and the like that are worked from both faces.
#pragma once

#include <vector>

#include "setup.h"
#include "setup_item.h"

namespace haunch {

/// Finds what loses wood at both faces, and tells with the later of the two what is to be left.
void tell_second_faces(std::vector<Setup>& setups, const std::vector<SetupItem>& items);

}  // namespace haunch
