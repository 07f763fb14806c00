// Reckoning with points and directions.
#pragma once

#include <cmath>

#include "polyhedron.h"

namespace haunch {

inline double dot(const Spot& a, const Spot& b) {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

inline Spot minus(const Spot& a, const Spot& b) {
  return {a[0] - b[0], a[1] - b[1], a[2] - b[2]};
}

inline Spot cross(const Spot& a, const Spot& b) {
  return {a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]};
}

inline double size_of(const Spot& direction) {
  return std::sqrt(dot(direction, direction));
}

}  // namespace haunch
