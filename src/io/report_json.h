// The report as JSON, format haunch-report-1.
#pragma once

#include <string>
#include <vector>

#include "report.h"
#include "spec_source.h"
#include "view.h"

namespace haunch {

/// What stands before the first item. `unit` is the report's.
std::string report_json_head(Unit unit);

/// One item. `first`: no other stands before it.
void append_item_json(std::string& out, const ItemReport& report, Section section, Unit unit,
                      bool first);

/// What stands after the last item, with everything that could not be worked.
std::string report_json_tail(const std::vector<PlacedProblem>& errors);

}  // namespace haunch
