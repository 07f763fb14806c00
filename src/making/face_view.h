// The sides of a piece that are worked, each seen from outside with what comes in through it.
#pragma once

#include <vector>

#include "making.h"

namespace haunch {

/// Where a cut opens, as seen, and how deep it goes from the blank's surface there. What slopes
/// down from the surface is seen as the rectangle round it, and told by its deepest.
struct CutShape {
  std::vector<Corner> outline;  // on the view
  Length depth;
};

/// What of one feature comes in through a side.
struct FaceCut {
  std::size_t feature = 0;  // by index into the piece's
  std::vector<CutShape> shapes;

  Length depth() const;  // of the deepest
};

/// A side of a piece: u to the right and v up, from its lower left corner, never mirrored. At its
/// left is the stop, from which places are told: the low end of the piece, of an end its face edge.
struct FaceView {
  WorkedSide side;
  Length width, height;
  bool datum_above = false;  // whether the corner that is measured from is the upper left one
  std::vector<FaceCut> cuts;
};

/// Those sides of a piece that operations come in through, in the order of its own axes.
std::vector<FaceView> worked_faces(const Assembly& wood, const Making& making, std::size_t piece);

}  // namespace haunch
