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

/// `need` and `at_most` by board are sums of whole-numbered values of parts, below 2^53: no
/// pattern of a board carries more. `need` is the least value of all that a plan cuts.
DualBound dual_bound(const Model& model, double need, const std::vector<double>& at_most);

}  // namespace haunch::lumber
