// Several items told together: once what is one for all, then a sheet for each way of being worked.
#pragma once

#include <string>
#include <vector>

#include "item_sheet.h"
#include "text_table.h"
#include "view.h"

namespace haunch {

/// Before all the sheets, their pieces in one cut list. Items that are worked alike share a sheet;
/// what reads on a sheet as on one before it is told there only. `lot`: the number of the batch
/// among those of a long run; 0 where it is the only one.
std::string batch_page(const std::vector<ItemSheet>& items, const View& view, Unit unit,
                       std::size_t lot);

}  // namespace haunch
