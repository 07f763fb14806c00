// Groups put together: leaves in pairs, and into what they hang in.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "haunch/wood.h"

namespace haunch {

/// Adds a part to the whole, at a place and under marks of its own, and gives the number of its
/// first group. One with a path of its own (`left-leaf`) has it before the names of its pieces too.
/// What the part stood in by itself is no fit any more, but for a wall, which goes with it.
std::size_t add_group(Assembly& whole, Assembly part, const Place& at,
                      const std::string& path = {});

/// What was added at a place that turns nothing, by itself again: as it stands in the whole, with
/// the marks that it has there, but for what is round it.
struct AloneGroup {
  Assembly wood;
  std::vector<std::size_t> pieces;  // by index into the whole's, rising
};
/// `room`: its own zero and its far corner, in the whole.
AloneGroup group_alone(const Assembly& whole, std::size_t group, const Box& room);

}  // namespace haunch
