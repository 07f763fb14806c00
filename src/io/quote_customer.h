// The customer's paper: what is made and what is asked for it, and nothing that a price is reckoned
// from.
#pragma once

#include <string>
#include <vector>

#include "page_part.h"
#include "quote_report.h"

namespace haunch {

/// What the price is not for, in words.
std::vector<std::string> not_included(const QuoteReport& report);

/// Until when a quote holds: "2031-06-16"; empty where that is not told.
std::string valid_until(const QuoteReport& report);

/// What is paid when, of the order as stated.
PageText stages_table(const QuoteReport& report, const LengthPrinter& lengths);

PageParts customer_parts(const QuoteReport& report, const LengthPrinter& lengths);

}  // namespace haunch
