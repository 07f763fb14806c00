// Checking an assembly: from its wood alone, as a joiner does at a dry fit.
#pragma once

#include <optional>
#include <vector>

#include "finding.h"
#include "haunch/length_text.h"
#include "haunch/wood.h"
#include "kind.h"

namespace haunch {

/// Every check on every joint and piece, in a fixed order. `unit` is the shop's: the trade's limits
/// come in both.
std::vector<Finding> check_assembly(const Assembly& assembly, Unit unit);

/// The same of a job's work, with what goes by more than its wood: by what its leaves serve for,
/// and of panels by a usual year where nothing is said of moisture.
std::vector<Finding> check_built(const Assembly& assembly, const Job& job);

/// The same, and where the job has seasons those of its wood at their moistures.
std::vector<Finding> check_job(const Assembly& assembly, const Job& job);

/// Every rule that check_assembly may report, in the order of its families.
std::vector<const Rule*> all_rules();

/// Shelves whose sag is no finding, as nothing is known of how stiff they are.
std::optional<Caution> shelves_not_looked_at(const Assembly& assembly, const Job& job);

}  // namespace haunch
