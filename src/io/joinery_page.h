// The joinery of a sheet, grouped so that a machine is set once and run.
#pragma once

#include "making.h"
#include "page_part.h"
#include "text_table.h"

namespace haunch {

PageParts joinery_page(const Assembly& wood, const Making& making, const LengthPrinter& lengths);

}  // namespace haunch
