// From a case's plan to its wood.
#pragma once

#include <array>
#include <cstddef>
#include <vector>

#include "carcase_plan.h"
#include "haunch/wood.h"

namespace haunch {

/// The pieces of a side that others stand on: of a framed one its two stiles, else the board.
struct SideMembers {
  std::size_t front = 0, rear = 0;

  std::vector<std::size_t> all() const {
    return front == rear ? std::vector{front} : std::vector{front, rear};
  }
};

/// A case, its sides, and which of its pieces are those of its plan's `inner`. Its zero is the
/// lower left corner of the whole, at the front of all.
struct SetOutCarcase {
  Assembly wood;
  std::array<SideMembers, 2> sides;  // left, right
  std::vector<std::size_t> inner;
};

SetOutCarcase set_out_carcase(const CarcasePlan& plan);

}  // namespace haunch
