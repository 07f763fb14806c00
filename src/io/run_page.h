// What is told of a run beside what its cabinets are told.
#pragma once

#include <vector>

#include "page_part.h"
#include "report.h"
#include "text_table.h"

namespace haunch {

/// How wide a filler is left at a place along it.
struct PlanedWidth {
  Length from_foot, width;
};
/// From its foot up; nothing of one that is not planed to a wall.
std::vector<PlanedWidth> planed_widths(const Piece& filler);

/// How wide fillers are that are planed to a wall; none of what has no such.
PageParts fillers_page(const ItemReport& report, const LengthPrinter& lengths);

}  // namespace haunch
