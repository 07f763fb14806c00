// What 'haunch rod' says as a page: a table of running marks for each rod.
#pragma once

#include "page_part.h"
#include "rods_report.h"
#include "text_table.h"

namespace haunch {

/// Of one item: a part for each rod.
PageParts rods_parts(const ItemRods& item, const LengthPrinter& lengths);
/// How all of them are to be read.
PageText rods_remark();

std::string rods_page(const std::vector<ItemRods>& items, const LengthPrinter& lengths);

}  // namespace haunch
