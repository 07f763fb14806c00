// How what was made piece by piece is put together: what is bought for it, how it is held square,
// in which order it goes.
#pragma once

#include "page_part.h"
#include "report.h"
#include "text_table.h"

namespace haunch {

PageParts together_page(const ItemReport& report, const LengthPrinter& lengths);

/// "4 shelf pins 5; 3 pairs of runners, travel 450"
std::string hardware_text(const std::vector<Hardware>& all, const LengthPrinter& lengths);

/// "case: C; F from above; …": of groups that are put together alike one line, of their pieces'
/// names.
std::vector<std::string> order_lines(const Assembly& wood, const std::vector<GroupOrder>& orders);

}  // namespace haunch
