// What earlier jobs say of the hours of a quote, on the shop's paper.
#pragma once

#include "page_part.h"
#include "quote_report.h"

namespace haunch {

/// How long the order as stated may take, and the rates that jobs stand behind; nothing where no
/// job says anything of it.
PageParts jobs_parts(const QuoteReport& report, const LengthPrinter& lengths);

}  // namespace haunch
