#include "haunch/wood.h"

namespace haunch {

bool interiors_meet(const Box& a, const Box& b) {
  for (std::size_t axis = 0; axis < 3; ++axis)
    if (a.high[axis] <= b.low[axis] || b.high[axis] <= a.low[axis]) return false;
  return true;
}

std::string joint_id(std::size_t joint) {
  return "J" + std::to_string(joint + 1);
}

Box placed(const Box& box, const Place& place) {
  Box result;
  for (std::size_t own = 0; own < 3; ++own) {
    const auto axis = static_cast<std::size_t>(place.axes[own]);
    result.low[axis] = place.origin[axis] + box.low[own];
    result.high[axis] = place.origin[axis] + box.high[own];
  }
  return result;
}

Box in_own_axes(const Box& box, const Place& place) {
  Box result;
  for (std::size_t own = 0; own < 3; ++own) {
    const auto axis = static_cast<std::size_t>(place.axes[own]);
    result.low[own] = box.low[axis] - place.origin[axis];
    result.high[own] = box.high[axis] - place.origin[axis];
  }
  return result;
}

Box placed_blank(const Piece& piece) {
  return placed(Box{{}, piece.blank}, piece.place);
}

}  // namespace haunch
