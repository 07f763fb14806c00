// Bounds from dual prices, safe in floating point: they hold for whatever prices are given.
//
//   DualBound, dual_bound
#pragma once

#include <cstdint>
#include <vector>

#include "model.h"

namespace haunch::lumber {

struct DualBound {
  bool possible = true;  // false: the stock cannot hold all parts
  std::int64_t linear = 0;
  std::int64_t dual_whole = 0;
};

/// `values` of the parts and `at_most` by board are whole numbers, their sums below 2^53: no
/// pattern of a board carries more. `placed` are the parts that a plan places.
DualBound dual_bound(const Model& model, const std::vector<double>& values,
                     const std::vector<double>& at_most, const std::vector<int>& placed);

}  // namespace haunch::lumber
