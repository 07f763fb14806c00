// What is seen of wood from one side.
//
// Whether a stretch of an edge is seen is asked of the blocks that wood is kept as, none of which
// is hollow: what a block hides of an edge is one stretch. Of curves only those lines are drawn
// where the wood ends as seen. Lines that lie on each other are one; of two pieces that are flush
// with each other the joint between them is seen.
#pragma once

#include <span>

#include "drawn_wood.h"
#include "sight.h"

namespace haunch {

enum class HiddenLines : unsigned char { left_out, drawn };

/// No two of its lines lie on each other; a hidden one is there only where none is seen.
LineView view_of(std::span<const DrawnWood> woods, const Sight& sight, HiddenLines hidden);

}  // namespace haunch
