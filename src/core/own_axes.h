// From the plane of a leaf to the axes of a piece.
#pragma once

#include "haunch/wood.h"

namespace haunch {

/// A place at x and y of the assembly, along a piece's length and width: it stands upright or lies
/// level, its thickness along z.
inline Corner in_own_axes(const Corner& at, const Place& place) {
  const Length x = at.u - place.origin[0];
  const Length y = at.v - place.origin[1];
  return place.axes[0] == Axis::y ? Corner{y, x} : Corner{x, y};
}

}  // namespace haunch
