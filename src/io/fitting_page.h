// What is let in for locks, hinges and other fittings.
#pragma once

#include <string>

#include "haunch/wood.h"
#include "text_table.h"

namespace haunch {

/// Empty where there are none.
std::string fittings_page(const Assembly& wood, const LengthPrinter& lengths);

}  // namespace haunch
