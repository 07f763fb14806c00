// Which task comes before which.
#pragma once

#include <cstddef>
#include <vector>

#include "setup_item.h"
#include "task.h"

namespace haunch {

/// Of each task those that must be done before it, by index.
using Before = std::vector<std::vector<std::size_t>>;

Before precedence(const std::vector<SetupItem>& items, const std::vector<Task>& tasks);

}  // namespace haunch
