// A trial cut as CSV.
#pragma once

#include <string>

#include "trial_report.h"
#include "view.h"

namespace haunch {

/// A row each for what was cut, what is to be set, and what there is to say. Lengths in `unit`;
/// `item_unit` is what the item was set out in, for the limits in messages.
std::string trial_csv(const TrialReport& report, Unit unit, Unit item_unit, CsvProfile profile);

}  // namespace haunch
