// Pieces that belong together, brought to one board.
#pragma once

#include "cutting.h"

namespace haunch::lumber {

/// Lays the wants out anew on the boards that the plan uses, group by group, and keeps that where
/// it splits fewer groups. Sets boards and split_groups; the boards used stay the same.
void gather(Plan& plan, const CuttingOrder& order);

}  // namespace haunch::lumber
