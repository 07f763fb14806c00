// From doubles back to lengths.
#pragma once

#include "haunch/length.h"

namespace haunch {

/// The length of the whole number of steps nearest to `steps`, a tie away from zero. Throws
/// LengthOverflow when `steps` is not finite or beyond 64 bits.
Length nearest_step(double steps);

}  // namespace haunch
