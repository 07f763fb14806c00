// Pictures on sheets: in rows, in their order, none over another.
#pragma once

#include <string>
#include <vector>

#include "view_picture.h"

namespace haunch {

/// What stays together.
struct SheetBlock {
  Picture picture;
  PaperScale scale;
};

struct LaidSheet {
  Picture picture;
  std::string scales;  // "1:2, 1:5"
};

/// Whether a block may stand on an earlier sheet than the one before it.
enum class Filling : unsigned char { first_with_room, in_order };

std::vector<LaidSheet> lay_out(const std::vector<SheetBlock>& blocks, const Extent& room,
                               Filling filling = Filling::first_with_room);

}  // namespace haunch
