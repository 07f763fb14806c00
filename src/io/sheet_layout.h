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

std::vector<LaidSheet> lay_out(const std::vector<SheetBlock>& blocks, const Extent& room);

}  // namespace haunch
