// What a notebook of jobs comes to, from the file that the command line names.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "actuals.h"
#include "complaints.h"

namespace haunch {

/// Nothing where it cannot be used, which `complaints` hears of. `jobs`: the orders that it may
/// tell of.
std::optional<CorrectedRates> corrections_of(const std::string& file, const Rates& rates,
                                             const std::vector<PlannedJob>& jobs,
                                             Complaints& complaints);

}  // namespace haunch
