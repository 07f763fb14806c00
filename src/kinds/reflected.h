// The handed twin of an assembly: what is seen of it in a mirror that stands beside it.
#pragma once

#include "haunch/wood.h"

namespace haunch {

/// Every piece, cut, joint and fit with left and right changed over, and what is told of it. What
/// stands at the left has the mark and the name that what stood there had: of pieces in a row the
/// first is the leftmost again. Fronts and other groups keep their numbers, joints theirs.
/// reflected(reflected(wood)) is `wood`.
Assembly reflected(Assembly wood);

}  // namespace haunch
