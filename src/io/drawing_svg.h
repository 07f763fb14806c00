// An item's drawing: sheets of paper, one user unit a millimetre.
#pragma once

#include <string>
#include <vector>

#include "drawing_sheets.h"

namespace haunch {

struct DrawingSheet {
  std::string id, title;
  std::string svg;  // one whole element, at its size on paper
};

/// The report has its making. Its sheets' ids begin with the item's own, as no other's do.
std::vector<DrawingSheet> drawing_of(const ItemReport& item, const LengthPrinter& lengths,
                                     const Paper& paper);

/// One sheet as a file of its own.
std::string sheet_file(const DrawingSheet& sheet);

/// All sheets below each other in one file.
std::string drawing_file(const std::vector<SheetPicture>& sheets, Unit unit, const Paper& paper);

}  // namespace haunch
