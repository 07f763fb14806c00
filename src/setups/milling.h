// From boards and sheets to pieces of their size: sawn and milled over size, rested, and again.
#pragma once

#include "setup_item.h"
#include "task.h"

namespace haunch {

/// Of every piece that is cut from wood or a sheet, in the order in which they are done. Glass, and
/// dowels and pins but for their length, come ready.
std::vector<Task> milling_tasks(const SetupItem& item, std::size_t number);

}  // namespace haunch
