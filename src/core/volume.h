// How much wood is left of a piece.
#pragma once

#include "haunch/wood.h"

namespace haunch {

/// In cubic millimetres, when all is cut and let in. As volume_of(solid_of(piece, let_in)), but
/// what is bored in the midst of wood, as holes for shelf pins are, is taken off by its own volume,
/// and nothing is cut to pieces for it.
double volume_left(const Piece& piece);

}  // namespace haunch
