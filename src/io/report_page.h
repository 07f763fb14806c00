// The report as a shop's sheet: to be read at the bench.
#pragma once

#include <string>

#include "report.h"
#include "view.h"

namespace haunch {

/// One item, or one part of it, ending in a newline.
std::string item_page(const ItemReport& report, const View& view, Unit unit);

/// What stands once below all items of a sheet.
std::string page_cautions(std::size_t page_width);

}  // namespace haunch
