// From a case's plan to its wood.
#pragma once

#include <cstddef>
#include <vector>

#include "carcase_plan.h"
#include "haunch/wood.h"

namespace haunch {

/// A case, and which of its pieces are those of its plan's `inner`; its sides come first. Its zero
/// is the lower left corner of the whole, at the front of all.
struct SetOutCarcase {
  Assembly wood;
  std::vector<std::size_t> inner;
};
inline constexpr std::size_t kLeftSide = 0, kRightSide = 1;

SetOutCarcase set_out_carcase(const CarcasePlan& plan);

}  // namespace haunch
