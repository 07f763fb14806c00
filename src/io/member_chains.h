// The chains of dimensions of a whole: places in the work, exact, as the report tells them.
#pragma once

#include <vector>

#include "noted_view.h"
#include "report.h"

namespace haunch {

enum class ChainsOf : unsigned char { elevation, plan, upright };

/// Places along an axis, and at which side of the view they stand; the outermost last.
struct PlacedChain {
  PaperSide side = PaperSide::below;
  Axis axis = Axis::x;
  std::vector<Length> places;
};

std::vector<PlacedChain> chains_told(const ItemReport& item, ChainsOf of);

}  // namespace haunch
