// The pieces of an item as files that other programs read: a solid each, and its worked sides.
#pragma once

#include <string>
#include <vector>

#include "output_folder.h"
#include "report.h"

namespace haunch {

struct ItemSolids {
  std::vector<FolderFile> files;    // "side-door/A.step", "side-door/A-right.svg"
  std::vector<std::string> faults;  // pieces that are no solid, in words; there are no files then
};

/// The report has its making.
ItemSolids solids_of(const ItemReport& item);

}  // namespace haunch
