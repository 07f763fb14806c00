// The report as a shop's sheet: to be read at the bench.
#pragma once

#include <string>

#include "report.h"
#include "view.h"

namespace haunch {

/// One item, or one part of it, ending in a newline.
std::string item_page(const ItemReport& report, Section section, Unit unit, LengthStyle style);

/// What stands once below all items of a sheet.
std::string page_cautions();

}  // namespace haunch
