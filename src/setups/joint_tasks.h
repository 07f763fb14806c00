// From the operations of an item to the tasks of its pieces.
#pragma once

#include "setup_item.h"
#include "task.h"

namespace haunch {

/// The process by which a feature is made.
Process process_of(FeatureKind kind);

/// What comes to the machine once it is glued up, along the axes of one of its pieces.
Triple size_of_whole(const Assembly& wood, const Piece& piece);

/// Every operation of an item, piece by piece and side by side, each feature in one task; and what
/// is glued up, a task a piece of it.
std::vector<Task> joint_tasks(const SetupItem& item, std::size_t number);

}  // namespace haunch
