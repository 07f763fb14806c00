// The report as a shop's sheet: to be read at the bench.
#pragma once

#include <string>

#include "report.h"
#include "text_table.h"
#include "view.h"

namespace haunch {

/// One item, or one part of it, ending in a newline.
std::string item_page(const ItemReport& report, const View& view, Unit unit);

/// What stands once below all items of a sheet.
std::string page_cautions(std::size_t page_width);

/// A value that was assumed, as a page tells it; several lengths with commas between them.
std::string value_text(const AssumedValue& value, const LengthPrinter& lengths);

}  // namespace haunch
