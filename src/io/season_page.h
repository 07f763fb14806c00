// A piece of work through its seasons, on the page and in CSV.
#pragma once

#include "csv_row.h"
#include "page_part.h"
#include "report.h"
#include "text_table.h"

namespace haunch {

/// What the wood does between its driest and its wettest, and what to leave at the bench.
PageParts season_page(const ItemReport& report, const LengthPrinter& lengths);

/// One row a panel and one for the leaf, at each moisture.
void append_season_csv(const CsvRow& row, const ItemReport& report);

}  // namespace haunch
