// What the stock cannot do.
//
//   unplaced_of     the parts a plan does not cut, and the stock that would do
//   shortage_of     why stock in limited number is not enough
#pragma once

#include "pattern.h"

namespace haunch::lumber {

/// `left` are the wants that fit some stock but found no place.
std::vector<Unplaced> unplaced_of(const std::vector<std::size_t>& left, const Model& model,
                                  const CuttingOrder& order);

/// `proven_short`: dual prices have shown it.
Shortage shortage_of(const Solution& solution, const Model& model, bool proven_short);

}  // namespace haunch::lumber
