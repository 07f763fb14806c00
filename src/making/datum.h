// The face side and the face edge of a piece: what its marks are gauged from, and what lies on the
// table and against the fence of a machine.
#pragma once

#include "haunch/wood.h"

namespace haunch {

/// Which of the two sides across its thickness, and of those across its width, they are: those
/// towards higher figures of its own axes, or towards lower ones.
struct Datum {
  bool face_high = false;
  bool edge_high = false;
};

/// By the custom of the bench, so that a pair is marked as a pair:
/// - Of leaves, face frames and whatever faces the front the face side is that towards the front.
///   Of other uprights, as sides and jambs, it is inside; of what lies level on top, but of what
///   closes something above below.
/// - The face edge of a stile or rail is that in which its joints are; of what goes back from the
///   front it is the front edge; else the lower or left one.
Datum datum_of(const Piece& piece);

}  // namespace haunch
