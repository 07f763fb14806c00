// What changes, as CSV: a row a change.
#pragma once

#include <string>

#include "comparison.h"
#include "view.h"

namespace haunch {

std::string comparison_csv(const Comparison& comparison, Unit unit, CsvProfile profile);

}  // namespace haunch
