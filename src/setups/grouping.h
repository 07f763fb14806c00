// Tasks that share a setting, put together to set-ups.
#pragma once

#include <cstddef>
#include <vector>

#include "setup.h"
#include "setup_item.h"

namespace haunch {

/// One set-up while it is not known when it comes: the tasks that are run on it.
struct SetupGroup {
  std::vector<std::size_t> tasks;
  std::vector<std::size_t> after;  // other groups, by index
};

struct Grouping {
  std::vector<ShopWay> ways;       // of each task
  std::vector<SetupGroup> groups;  // each after all that it needs
  std::int64_t different = 0;      // settings
  std::int64_t piece_by_piece = 0;
};

Grouping group_tasks(const std::vector<SetupItem>& items, const std::vector<Task>& tasks,
                     const std::vector<Machine>& machines);

}  // namespace haunch
