// The shop's paper: hours, cost and price of an order with all that they come from.
#pragma once

#include "page_part.h"
#include "quote_report.h"

namespace haunch {

PageParts quote_parts(const QuoteReport& report, const LengthPrinter& lengths);

}  // namespace haunch
