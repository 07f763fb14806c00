// What 'haunch rod' says as a page: a table of running marks for each rod.
#pragma once

#include "rods_report.h"
#include "text_table.h"

namespace haunch {

std::string rods_page(const std::vector<ItemRods>& items, const LengthPrinter& lengths);

}  // namespace haunch
