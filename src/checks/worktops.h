// What is cut out of worktops.
#pragma once

#include <vector>

#include "family.h"

namespace haunch {

void check_worktops(Bench& bench);
std::vector<const Rule*> rules_of_worktops();

}  // namespace haunch
