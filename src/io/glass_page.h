// What the joinery page says of glass: its rebates, its sizes, its beads.
#pragma once

#include <string>

#include "making.h"
#include "text_table.h"

namespace haunch {

/// Empty where there is no glass.
std::string glass_page(const Assembly& wood, const Making& making, const LengthPrinter& lengths);

}  // namespace haunch
