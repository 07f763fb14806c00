// Whether the fronts of cabinets beside each other line through.
#pragma once

#include <vector>

#include "family.h"

namespace haunch {

void check_front_lines(Bench& bench);
std::vector<const Rule*> rules_of_front_lines();

}  // namespace haunch
