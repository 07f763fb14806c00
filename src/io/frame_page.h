// The joinery of frames as tables: housings, rebates along an edge, planted stops.
#pragma once

#include <string>

#include "making.h"
#include "text_table.h"

namespace haunch {

/// Empty where an assembly has none of these.
std::string frame_page(const Assembly& wood, const Making& making, const LengthPrinter& lengths);

}  // namespace haunch
