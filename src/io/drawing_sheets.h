// The sheets of an item's drawing: what stands on which, and where.
#pragma once

#include <string>
#include <vector>

#include "paper.h"
#include "picture.h"
#include "report.h"
#include "text_table.h"

namespace haunch {

/// A sheet with all that is drawn on it, but the proof of its size; zero is its lower left corner.
struct SheetPicture {
  std::string id, title, about;
  std::string scale;  // "1:10"; of several all, the largest first
  Picture picture;
};

/// The report has its making.
std::vector<SheetPicture> drawing_sheets(const ItemReport& item, const LengthPrinter& lengths,
                                         const Paper& paper);

}  // namespace haunch
