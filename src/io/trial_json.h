// A trial cut as JSON, format haunch-trial-1.
#pragma once

#include <string>

#include "haunch/length_text.h"
#include "trial_report.h"

namespace haunch {

/// In `unit`; `item_unit` is what the item was set out in, for the limits in messages.
std::string trial_json(const TrialReport& report, Unit unit, Unit item_unit);

}  // namespace haunch
