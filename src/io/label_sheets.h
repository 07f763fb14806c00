// Labels as sheets of stickers, ready for the printer: one HTML file, nothing fetched, no script.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "labels.h"
#include "sticker.h"
#include "text_table.h"

namespace haunch {

/// How the stickers stand on their sheet: as many as go, in the middle of what the margin leaves.
struct StickerSheet {
  PrintSize paper, sticker;
  PrintSize margin;  // left and right; head and foot
  PrintSize gap;     // between columns; between rows
};

struct StickerGrid {
  std::size_t columns = 0, rows = 0;
  PrintSize first;    // from the paper's upper left corner to the first sticker
  PrintSize padding;  // of each, more where printers do not reach the paper's edge
};

/// Nothing where not one goes on the paper.
std::optional<StickerGrid> grid_of(const StickerSheet& sheet);

struct LabelSheets {
  std::string html;
  std::size_t stickers = 0, sheets = 0;
  std::size_t shortened = 0;  // stickers that leave something out
  std::string too_long;       // else: the mark of a label that a sticker has no room for,
  PrintSize would_do;         // and a size on which all have room
};

LabelSheets label_sheets(const std::vector<ItemLabels>& items, const StickerSheet& sheet,
                         const StickerGrid& grid, const std::string& order,
                         const LengthPrinter& lengths);

}  // namespace haunch
