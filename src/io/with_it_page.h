// What goes with work of any kind, as the page tells it: extras, finish, fittings of the shop's
// list, the way to its place.
#pragma once

#include <string>
#include <vector>

#include "bought.h"
#include "carrying.h"
#include "page_part.h"
#include "report.h"
#include "text_table.h"

namespace haunch {

/// What is worked on each extra, as it lies face up.
PageParts extras_page(const ItemReport& report, const LengthPrinter& lengths);

/// Where more than a finish's name is said.
PageParts finish_page(const ItemReport& report, const LengthPrinter& lengths);

/// For all of an item's quantity, in whole packs.
PageParts bought_page(const ItemReport& report);
std::vector<BoughtLine> bought_by(const ItemReport& report);
/// "butt 75 (B75): 7, 4 packs of 2; order by 2031-05-03"
std::string bought_words(const BoughtLine& line, const std::string& due);

PageParts carrying_page(const ItemReport& report, const LengthPrinter& lengths);

}  // namespace haunch
