// From the axes of an assembly to those of a piece.
#pragma once

#include <algorithm>
#include <cstddef>

#include "haunch/wood.h"

namespace haunch {

/// Which of its own axes runs along one of the assembly's.
inline std::size_t own_axis(const Place& place, Axis axis) {
  const auto own = std::find(place.axes.begin(), place.axes.end(), axis);
  return static_cast<std::size_t>(own - place.axes.begin());
}

/// Whether this way along the assembly is towards higher figures of a piece's own axis too.
inline bool own_upwards(const Place& place, const Heading& heading) {
  return heading.upwards != place.backwards[own_axis(place, heading.axis)];
}

/// A place at x and y of the assembly, along a piece's length and width: it stands upright or lies
/// level, its thickness along z.
inline Corner in_own_axes(const Corner& at, const Place& place) {
  const Length x = at.u - place.origin[0];
  const Length y = at.v - place.origin[1];
  return place.axes[0] == Axis::y ? Corner{y, x} : Corner{x, y};
}

/// Whether a groove opens in a face of its piece alone, away from its edges: which of the axes that
/// both boxes are told in lie across its width and through its thickness.
inline bool opens_in_face(const Box& groove, const Box& blank, std::size_t across,
                          std::size_t through) {
  const auto touches = [&](std::size_t axis) {
    return groove.low[axis] == blank.low[axis] || groove.high[axis] == blank.high[axis];
  };
  return touches(through) && !touches(across);
}

}  // namespace haunch
