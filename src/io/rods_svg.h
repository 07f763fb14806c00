// Rods drawn at full size: strips whose user unit is a millimetre, in one piece or on sheets of
// paper that overlap.
#pragma once

#include <string_view>

#include "rods_report.h"
#include "text_table.h"

namespace haunch {

/// `paper`: "a4", "letter"; empty: each rod in one piece.
std::string rods_svg(const std::vector<ItemRods>& items, const LengthPrinter& lengths,
                     std::string_view paper);

}  // namespace haunch
