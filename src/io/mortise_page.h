// Mortises, those of tenons and of loose tenons, and the seats of haunches, as they are marked and
// cut.
#pragma once

#include <string>

#include "making.h"
#include "text_table.h"

namespace haunch {

// Each is empty where there are none.
std::string mortise_page(const Assembly& wood, const Making& making, const LengthPrinter& lengths);
/// Seats of haunches that have none in a groove.
std::string haunching_page(const Assembly& wood, const Making& making,
                           const LengthPrinter& lengths);

}  // namespace haunch
