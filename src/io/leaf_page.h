// How leaves meet each other and their opening, as it is worked at their outer edges.
#pragma once

#include <string>

#include "making.h"
#include "text_table.h"

namespace haunch {

/// Empty where an assembly has none of this.
std::string leaf_page(const Assembly& wood, const Making& making, const LengthPrinter& lengths);

}  // namespace haunch
