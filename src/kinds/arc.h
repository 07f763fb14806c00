// Arcs drawn in straight lines.
#pragma once

#include "haunch/length.h"

namespace haunch {

/// A curve is drawn in straight lines that leave it by no more than this.
inline constexpr Length kCurveTolerance = Length::from_mm_thousandths(20);

/// Into how many equal chords an arc goes: of `radius` steps, over `turn` radians.
int chords_of(double radius, double turn);

}  // namespace haunch
