// The edges of wood as they are drawn.
#pragma once

#include <optional>
#include <vector>

#include "drawn_wood.h"

namespace haunch {

/// Of its shell, or where there is none of the blocks that it is kept as.
std::vector<DrawnEdge> edges_of(const Wood& wood, const std::optional<Shell>& shell);

/// Whether a face lies in a plane square to an axis and looks this way.
bool looks(const HalfSpace& side, Way way, Length at);

}  // namespace haunch
