// The joinery of a sheet, grouped so that a machine is set once and run.
#pragma once

#include <string>

#include "making.h"
#include "text_table.h"

namespace haunch {

std::string joinery_page(const Assembly& wood, const Making& making, const LengthPrinter& lengths);

}  // namespace haunch
