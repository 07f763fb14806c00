// What changes, as JSON, format haunch-compare-1.
#pragma once

#include <string>

#include "comparison.h"
#include "haunch/length_text.h"

namespace haunch {

std::string comparison_json(const Comparison& comparison, Unit unit);

}  // namespace haunch
