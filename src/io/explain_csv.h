// Explanations as CSV.
#pragma once

#include <string>
#include <string_view>

#include "explain.h"
#include "view.h"

namespace haunch {

/// Rows of the values that are meant by `what`, with all that they come from; of all where it is
/// empty. The titles stand above the first item's.
void append_explanation_csv(std::string& out, const Explanation& explanation, std::string_view what,
                            Unit unit, CsvProfile profile);

}  // namespace haunch
