// What a piece is sawn to.
#pragma once

#include "haunch/wood.h"

namespace haunch {

/// A piece's own length, width and thickness: those of its blank, but of one that lies askew in it
/// what its feature `skew` says.
Triple sawn_sizes(const Piece& piece);

/// What it is cut to before strips are glued to its edges: less those that are thick enough to
/// count; thinner ones are as thick as what is trued off.
Triple cut_sizes(const Piece& piece);

}  // namespace haunch
