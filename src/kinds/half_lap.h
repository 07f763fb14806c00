// Half-laps: two pieces cross or meet at a corner, each cut away to the other's lap, flush on both
// sides.
#pragma once

#include "haunch/wood.h"
#include "junction.h"

namespace haunch {

struct LapDesign {
  Length reach;           // how far the entering piece goes over the other: right across, or less
  Length from_face;       // face side to where the laps meet
  Length edge_clearance;  // at each edge of the entering lap that has wood beside it
  Length end_clearance;   // of a lap that stops short, at its end
};

/// Laps a piece whose end lies over the receiver already, and adds the joint. The entering piece
/// keeps its back, so that the other is whole on the face side.
void join_by_half_lap(Assembly& assembly, const Junction& junction, const LapDesign& lap);

}  // namespace haunch
