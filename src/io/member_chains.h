// The chains of dimensions of a whole: places in the work, exact, as the report tells them.
#pragma once

#include <vector>

#include "kind.h"
#include "noted_view.h"

namespace haunch {

/// What is drawn as a whole, with what is told of it: an item, or by itself what stands in one.
struct ShownWhole {
  const Assembly& wood;
  const std::vector<Chain>& chains;
  const std::vector<NamedRoom>& rooms;
};

enum class ChainsOf : unsigned char { elevation, plan, upright };

/// Places along an axis, and at which side of the view they stand; the outermost last.
struct PlacedChain {
  PaperSide side = PaperSide::below;
  Axis axis = Axis::x;
  std::vector<Length> places;
};

/// A leaf that is known to be hung, and at which side.
struct HungLeaf {
  std::size_t group = 0;
  bool at_right = false;
  std::vector<Length> hinges;  // edges of their recesses, upwards; none where they are not told
};
std::vector<HungLeaf> hung_leaves(const Assembly& wood);

std::vector<PlacedChain> chains_told(const ShownWhole& shown, ChainsOf of);

}  // namespace haunch
