// The report as JSON, format haunch-report-1.
#pragma once

#include <string>
#include <string_view>

#include "report.h"
#include "spec_source.h"
#include "view.h"

namespace haunch {

/// What stands before the first item. `unit` is the report's.
std::string report_json_head(Unit unit);

/// One item. `first`: no other stands before it.
void append_item_json(std::string& out, const ItemReport& report, Section section, Unit unit,
                      bool first);

/// What stands between the last item and the first error, and after the last error.
inline constexpr std::string_view kReportJsonErrors = "\n], \"errors\": [";
inline constexpr std::string_view kReportJsonEnd = "]}\n";

/// One of what could not be worked. `first`: no other stands before it.
void append_error_json(std::string& out, const PlacedProblem& error, bool first);

}  // namespace haunch
