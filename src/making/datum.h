// The face and the edge of a piece that its marks are gauged from.
#pragma once

#include "haunch/wood.h"

namespace haunch {

/// Its face side is always at the low end of its own thickness, from which all places through it
/// are told; of its two edges the one where more is worked, and of two alike the low one.
struct Datum {
  bool edge_high = false;
};

Datum datum_of(const Piece& piece);

}  // namespace haunch
