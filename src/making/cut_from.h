// Whether a piece can still be got out of another that is cut already.
#pragma once

#include "haunch/wood.h"

namespace haunch {

/// Whether all of the wood of `piece`, horns too, lies within that of `old`, the one moved along
/// the other without turning it: then it takes no more than sawing off and cutting more. Some ways
/// to lay them are tried, so that where it says no there may still be one. Of what both are made is
/// not asked; of glass never.
bool can_be_cut_from(const Piece& piece, const Piece& old);

}  // namespace haunch
