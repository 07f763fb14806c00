// What is told of a run beside what its cabinets are told.
#pragma once

#include "page_part.h"
#include "report.h"
#include "text_table.h"

namespace haunch {

/// How wide fillers are that are planed to a wall; none of what has no such.
PageParts fillers_page(const ItemReport& report, const LengthPrinter& lengths);

}  // namespace haunch
