#include "sheet_layout.h"

#include <algorithm>
#include <iterator>
#include <set>
#include <utility>

namespace haunch {
namespace {

constexpr double kApart = 7;  // of two blocks at least

struct LaidBlock {
  const SheetBlock* block;
  Extent extent;
};

/// Blocks side by side, and rows of them on one sheet.
struct BlockRow {
  std::vector<LaidBlock> blocks;
  double width = 0, height = 0;

  bool has_room_for(const Extent& extent, double room) const {
    return blocks.empty() || width + kApart + extent.width() <= room;
  }
  void add(const LaidBlock& its) {
    width += (blocks.empty() ? 0 : kApart) + its.extent.width();
    height = std::max(height, its.extent.height());
    blocks.push_back(its);
  }
};

double height_of(const std::vector<BlockRow>& rows) {
  double height = 0;
  for (const BlockRow& row : rows)
    height += (height == 0 ? 0 : kApart) + row.height;
  return height;
}

BlockRow row_of(const LaidBlock& its) {
  BlockRow row;
  row.add(its);
  return row;
}

/// Puts a block to a row of a sheet, or below all, if it has room there.
bool found_place(std::vector<BlockRow>& sheet, const LaidBlock& its, const Extent& room) {
  for (std::size_t row = 0; row <= sheet.size(); ++row) {
    std::vector<BlockRow> with = sheet;
    if (row == sheet.size()) with.emplace_back();
    if (!with[row].has_room_for(its.extent, room.width())) continue;
    with[row].add(its);
    if (height_of(with) > room.height()) continue;
    sheet = std::move(with);
    return true;
  }
  return false;
}

/// What is left over stands in equal parts beside and between the blocks.
void place_row(Picture& picture, const BlockRow& row, const Extent& room, double top) {
  const auto count = static_cast<double>(row.blocks.size());
  const double taken = row.width - kApart * (count - 1);
  const double between = (room.width() - taken) / (count + 1);
  double u = room.low.u + between;
  for (const LaidBlock& its : row.blocks) {
    picture.add(its.block->picture, {u - its.extent.low.u, top - its.extent.high.v});
    u += its.extent.width() + between;
  }
}

LaidSheet sheet_of(const std::vector<BlockRow>& rows, const Extent& room) {
  LaidSheet sheet;
  const auto count = static_cast<double>(rows.size());
  const double spare = room.height() - height_of(rows);
  const double between = kApart + std::min(spare / (count + 1), 14.0);
  double top = room.high.v - (rows.size() == 1 ? spare / 2 : std::min(spare / (count + 1), 6.0));
  std::set<int> scales;
  for (const BlockRow& row : rows) {
    place_row(sheet.picture, row, room, top);
    top -= row.height + between;
    for (const LaidBlock& its : row.blocks)
      scales.insert(its.block->scale.one_to);
  }
  for (const int scale : scales)
    sheet.scales += (sheet.scales.empty() ? "" : ", ") + scale_text({scale});
  return sheet;
}

}  // namespace

std::vector<LaidSheet> lay_out(const std::vector<SheetBlock>& blocks, const Extent& room,
                               Filling filling) {
  std::vector<std::vector<BlockRow>> sheets;
  for (const SheetBlock& block : blocks) {
    const LaidBlock its{&block, extent_of(block.picture).value_or(Extent())};
    const auto first =
        filling == Filling::in_order && !sheets.empty() ? std::prev(sheets.end()) : sheets.begin();
    const bool has_place = std::any_of(first, sheets.end(),
                                       [&](auto& sheet) { return found_place(sheet, its, room); });
    if (!has_place) sheets.push_back({row_of(its)});
  }
  std::vector<LaidSheet> laid;
  for (const std::vector<BlockRow>& rows : sheets)
    laid.push_back(sheet_of(rows, room));
  return laid;
}

}  // namespace haunch
