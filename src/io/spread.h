// Blocks of lettering that each want to stand beside something, moved apart so that none lies over
// another.
#pragma once

#include <vector>

#include "haunch/length.h"

namespace haunch {

struct Block {
  Length wanted;  // its upper edge, downwards from any zero
  Length height;
};

/// The upper edge of each, in their order, which is by what they want: none above `top` or over the
/// one before, and where they all have room none below `bottom`. What has to move moves as little
/// as it can, all that touch each other together.
std::vector<Length> spread(const std::vector<Block>& blocks, Length top, Length bottom);

}  // namespace haunch
