// A second opinion on cabinets, face frames and drawers: their wood rebuilt from blanks and cuts,
// at rest and as it is moved.
//
// It shares nothing with the program's checks or its setting out. Wood is asked for at points: in
// the middle of every cell that the faces of blanks and cuts make, so that of square wood nothing
// is missed, and where wood slopes at some points of the cell besides.
#pragma once

#include <string>
#include <vector>

#include "haunch/wood.h"

namespace haunch::test {

/// What is wrong with it as it stands: cuts outside their blanks, wood that two pieces share, wood
/// outside the size.
std::vector<std::string> faults_at_rest(const Assembly& assembly);

/// What is wrong round its fronts: a gap that is not as the fit says, as the blanks measure it.
std::vector<std::string> faults_of_gaps(const Assembly& assembly);

/// Loose shelves that leave another room beside them than `play`, both ends together.
std::vector<std::string> faults_of_loose_shelves(const Assembly& assembly, Length play);

/// What is met on the way: by a leaf as it swings to a right angle, by a drawer as it is drawn out
/// and the leaves before it are open.
std::vector<std::string> faults_on_the_way(const Assembly& assembly);

/// The wood of a piece in cubic steps, where all of its cuts are square; below 0 where not.
double square_volume(const Piece& piece);

}  // namespace haunch::test
