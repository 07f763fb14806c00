// Places across the faces of pieces.
#pragma once

#include "making.h"

namespace haunch {

/// Tells of every run in a face that is placed along its piece, and set to no distance from an
/// edge, where across the piece it lies.
void tell_across(Making& making, const Assembly& wood);

}  // namespace haunch
