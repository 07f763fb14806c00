// What a piece is sawn to.
#pragma once

#include "haunch/wood.h"

namespace haunch {

/// A piece's own length, width and thickness: those of its blank, but of one that lies askew in it
/// what its feature `skew` says.
Triple sawn_sizes(const Piece& piece);

}  // namespace haunch
