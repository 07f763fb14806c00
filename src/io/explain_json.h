// Explanations as JSON, format haunch-explain-1.
#pragma once

#include <string>
#include <string_view>

#include "explain.h"

namespace haunch {

/// What stands before the first item, and after the last one.
std::string explain_json_head();
inline constexpr std::string_view kExplainJsonEnd = "\n]}\n";

/// The values of that are meant by `what`, with all that they come from; of all where it is empty.
/// Lengths in `unit`. `first`: no other item stands before it.
void append_explanation_json(std::string& out, const Explanation& explanation,
                             std::string_view what, Unit unit, bool first);

}  // namespace haunch
