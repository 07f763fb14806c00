// The boards of a cutting plan drawn to scale, alike ones once.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "lumber_report.h"
#include "paper.h"
#include "text_table.h"

namespace haunch {

struct BoardDrawing {
  std::string title;  // "BOARD 1: rack-1, 2650 x 270 x 54, European oak, in hand"
  std::string svg;    // an element whose user unit is a millimetre
};

/// Each at most as large as what the paper holds when it lies on its side, A4 277 x 180; one that
/// has more to tell goes on in another. Ids in them begin with "board-".
std::vector<BoardDrawing> board_drawings(const LumberReport& report, const LengthPrinter& lengths,
                                         const Paper& paper);

/// The same on sheets of paper ("a4", "letter"), which lie one below the other, and what found no
/// place.
std::string lumber_svg(const LumberReport& report, const LengthPrinter& lengths,
                       std::string_view paper);

}  // namespace haunch
