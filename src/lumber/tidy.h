// A board laid out anew with the same parts, for larger offcuts and fewer cuts.
#pragma once

#include "cutting.h"
#include "pattern.h"

namespace haunch::lumber {

/// Where another layout of the same parts on each span loses no more wood and leaves what is kept
/// in larger offcuts, or in as large ones after fewer cuts, the pattern takes it.
void tidy(Pattern& pattern, const Model& model, const CuttingOrder& order);

}  // namespace haunch::lumber
