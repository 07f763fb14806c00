// A second opinion on cutting plans, from their description alone.
#pragma once

#include <string>
#include <vector>

#include "cutting.h"

namespace haunch::lumber {

/// What is wrong with the plan, one clause each.
std::vector<std::string> objections(const Plan& plan, const CuttingOrder& order);

}  // namespace haunch::lumber
