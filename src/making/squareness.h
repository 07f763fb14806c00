// The rectangles that are measured from corner to corner while the glue is wet.
#pragma once

#include <string>
#include <vector>

#include "haunch/wood.h"

namespace haunch {

struct Rectangle {
  std::string what;  // "case outside"
  std::size_t group = 0;
  Length width, height;

  Length diagonal() const;
  /// By how much the two diagonals may differ.
  Length may_differ() const;
};

/// Cases outside and inside, face frames and what is open in them, leaves, drawers and bases; of a
/// leaf or frame that is all there is, none.
std::vector<Rectangle> rectangles_of(const Assembly& wood);

}  // namespace haunch
