// Mouldings and raised panels on a drawing: each different one once, cut square to its edge.
#pragma once

#include <vector>

#include "report.h"
#include "sheet_layout.h"
#include "text_table.h"

namespace haunch {

struct EdgeDetail {
  std::size_t piece;  // that it is shown on
  SheetBlock block;
};

/// One for each edge that is moulded otherwise, none larger than `room`. None of what runs along a
/// curve alone: it is told with its arch.
std::vector<EdgeDetail> edge_details(const ItemReport& item, const LengthPrinter& lengths,
                                     const Extent& room);

}  // namespace haunch
