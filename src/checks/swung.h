// What turns about a pin, on its way.
#pragma once

#include "haunch/wood.h"

namespace haunch {

/// A box turned about an upright pin by so many radians, so that its face side comes forward.
Prism turned(const Box& box, const Swing& swing, double angle);

}  // namespace haunch
