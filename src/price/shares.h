// Money shared out so that the parts add up to the whole.
#pragma once

#include <vector>

#include "money.h"

namespace haunch {

/// `whole` in as many parts as there are weights (>= 0), each as its weight is to their sum, and
/// all equal where that is nothing. Every part is rounded down, and the hundredths that are left
/// over go one each to those that lost most by it, of equal ones to the first: the method of
/// largest remainders. Requires a weight at least.
std::vector<Money> shares_of(Money whole, const std::vector<double>& weights);

}  // namespace haunch
