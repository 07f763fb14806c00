#include "sight.h"

#include <cmath>

#include "spots.h"

namespace haunch {

Sight sight_from(ViewedFrom from) {
  switch (from) {
    case ViewedFrom::front:
      return {{1, 0, 0}, {0, 1, 0}, {0, 0, -1}};
    case ViewedFrom::back:
      return {{-1, 0, 0}, {0, 1, 0}, {0, 0, 1}};
    case ViewedFrom::left:
      return {{0, 0, -1}, {0, 1, 0}, {-1, 0, 0}};
    case ViewedFrom::right:
      return {{0, 0, 1}, {0, 1, 0}, {1, 0, 0}};
    case ViewedFrom::above:
      return {{1, 0, 0}, {0, 0, 1}, {0, 1, 0}};
    case ViewedFrom::below:
      return {{1, 0, 0}, {0, 0, -1}, {0, -1, 0}};
  }
  return {};
}

Sight slanted_sight(const NearCorner& nearest) {
  const double x = nearest.right ? 1 : -1;
  const double y = nearest.above ? 1 : -1;
  const double z = nearest.front ? -1 : 1;
  const double across = std::sqrt(3.0) / 2;  // the cosine of 30°
  const double rise = 0.5;                   // its sine
  return {{-z * across, 0, x * across}, {-x * y * rise, 1, -z * y * rise}, {x, y, z}};
}

ViewSpot seen_at(const Sight& sight, const Spot& spot) {
  constexpr double kSteps = Length::kStepsPerMm;
  return {dot(sight.right, spot) / kSteps, dot(sight.up, spot) / kSteps};
}

ViewSpot seen_at(const Sight& sight, const Triple& place) {
  Spot spot;
  for (std::size_t axis = 0; axis < 3; ++axis)
    spot[axis] = static_cast<double>(place[axis].steps());
  return seen_at(sight, spot);
}

}  // namespace haunch
