#include "arc.h"

#include <algorithm>
#include <cmath>

namespace haunch {

int chords_of(double radius, double turn) {
  // A chord over an angle a leaves its arc by radius * (1 - cos(a / 2)).
  const double off = static_cast<double>(kCurveTolerance.steps()) / radius;
  const double most = 2 * std::acos(1 - std::min(off, 1.0));
  return std::max(static_cast<int>(std::ceil(turn / most)), 1);
}

}  // namespace haunch
