// The sheet of stickers that a command line asks for.
#pragma once

#include <string>
#include <variant>

#include "invocation.h"
#include "label_sheets.h"

namespace haunch {

/// A sheet on which stickers go, and where they stand on it.
struct AskedSheet {
  StickerSheet sheet;
  StickerGrid grid;
};

/// Or what is wrong with the options, and what would be right.
std::variant<AskedSheet, std::string> asked_sheet(const Invocation& invocation);

}  // namespace haunch
