// What is let in for locks, hinges and other fittings.
#pragma once

#include <string>

#include "making.h"
#include "text_table.h"

namespace haunch {

/// Empty where there are none.
std::string fittings_page(const Assembly& wood, const Making& making, const LengthPrinter& lengths);

}  // namespace haunch
