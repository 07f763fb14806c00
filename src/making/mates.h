// What a piece is joined to.
#pragma once

#include <cstddef>
#include <vector>

#include "haunch/wood.h"

namespace haunch {

/// Another piece, and all joints of one kind between the two.
struct Mate {
  std::size_t piece = 0;
  JointKind kind = JointKind::butt;
  std::vector<std::size_t> joints;  // by index into Assembly::joints
};

/// In the order of their joints.
std::vector<Mate> mates_of(const Assembly& wood, std::size_t piece);

}  // namespace haunch
