// Pieces that belong together, brought to one board.
#pragma once

#include "cutting.h"
#include "model.h"

namespace haunch::lumber {

/// Lays some boards of the plan out anew, with the same parts among them, as long as that splits
/// fewer groups. The boards used stay the same.
void gather(Plan& plan, const Model& model, const CuttingOrder& order);

}  // namespace haunch::lumber
