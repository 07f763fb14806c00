// Round holes bored for a fitting in the face or the back of a piece.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "haunch/wood.h"

namespace haunch {

struct FaceBore {
  FeatureKind kind = FeatureKind::screw_hole;
  std::string name;      // of its fitting
  std::size_t into = 0;  // the assembly's axis along which it is bored
  bool upwards = true;   // towards higher figures, from the piece's side that lies there
  Triple middle;         // in the assembly; along `into` it does not matter
  Length diameter, depth;
  std::vector<NamedSize> told = {};  // where it is told to be
};

/// What it takes of a piece.
Feature bored(const Piece& piece, const FaceBore& hole);

void bore(Piece& piece, const FaceBore& hole);

}  // namespace haunch
