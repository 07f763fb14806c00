// The report as CSV (RFC 4180): one table a command, units in the headers, decimals only.
#pragma once

#include <string>

#include "report.h"
#include "view.h"

namespace haunch {

/// The header line; the sheet's table is the cut list.
std::string csv_head(Section section, Unit unit, CsvProfile profile);

/// The rows of one item.
void append_item_csv(std::string& out, const ItemReport& report, Section section, Unit unit,
                     CsvProfile profile);

}  // namespace haunch
