// The report as a shop's sheet: to be read at the bench.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "item_sheet.h"
#include "report.h"
#include "text_table.h"
#include "view.h"

namespace haunch {

/// One item, or one part of it, ending in a newline.
std::string item_page(const ItemReport& report, const View& view, Unit unit);

std::string item_page(const ItemSheet& sheet, const View& view, Unit unit);
ItemSheet item_sheet(const ItemReport& report, const View& view, Unit unit);

/// "side-door: side door, 1 off; sizes in mm"
std::string item_title(const ItemSheet& sheet, Unit unit);
/// What stands below that before all parts: sizes, the note, how many checks fail.
PageText head_text(const ItemSheet& sheet);

/// What passes, rule by rule, and what was assumed.
PageParts passes_parts(const ItemReport& report, const LengthPrinter& lengths);
PageParts assumed_parts(const ItemReport& report, const LengthPrinter& lengths);

/// Of a cut list all but its marks: titles, and the cells of a row.
std::vector<std::string> cut_titles();
std::vector<Cell> cut_cells(const CutRow& row);

/// "edge strip: 12.4 m of oak, 2 thick, for edges of 18"
PageText strips_text(const std::vector<StripTotal>& strips, const LengthPrinter& lengths);

/// "mm", "inches"
std::string unit_words(Unit unit);

/// That there is more to be known than stands on the page. `assumed`: "22 values are"; empty: none
/// is, or the page lists them.
std::string last_line(std::string_view assumed, bool rounded, Unit unit, const View& view);

/// What stands once below all items of a sheet.
PageText page_cautions(std::size_t page_width);

/// A value that was assumed, as a page tells it; several lengths with commas between them.
std::string value_text(const AssumedValue& value, const LengthPrinter& lengths);

}  // namespace haunch
