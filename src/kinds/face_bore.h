// Round holes bored for a fitting in the face of a piece.
#pragma once

#include <string>

#include "haunch/wood.h"

namespace haunch {

struct FaceBore {
  FeatureKind kind = FeatureKind::screw_hole;
  std::string name;      // of its fitting
  Length along, across;  // its middle, from the low end and the low edge
  Length diameter, depth;
  bool from_high = false;
  NamedSize told;  // across, from where it is told
  SizeName told_along = SizeName::from_foot;
};

void bore(Piece& piece, const FaceBore& hole);

}  // namespace haunch
