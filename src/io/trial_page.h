// A trial cut as a page: what was read, what it makes, what to set, what to measure next.
#pragma once

#include <string>

#include "text_table.h"
#include "trial_report.h"

namespace haunch {

/// `unit` is the item's.
std::string trial_page(const TrialReport& report, Unit unit, const LengthPrinter& lengths);

}  // namespace haunch
