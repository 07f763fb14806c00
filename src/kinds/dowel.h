// Dowels: the end of a rail or muntin stands flat on what receives it, held by round pegs that are
// let half into each.
#pragma once

#include <optional>
#include <vector>

#include "haunch/wood.h"
#include "junction.h"

namespace haunch {

struct DowelDesign {
  Length bore;                    // diameter of the holes
  Length diameter;                // of the dowels: less, by the fit allowance
  Length depth;                   // of each dowel in each of its two pieces
  Length bottom;                  // left of each hole below its dowel
  Length from_face;               // face side to the near wall of each hole
  std::vector<Length> from_edge;  // near walls of the holes across the width of the piece whose end
                                  // they hold, lowest or leftmost first
};

/// Bores both pieces, whose end and edge meet already, and lets the dowels in: a piece each, and a
/// joint each with both. `receiver_shoulder`: where the receiver's own shoulder stands along its
/// length, if it has one.
void join_by_dowels(Assembly& assembly, const Junction& junction, const DowelDesign& dowels,
                    std::optional<Length> receiver_shoulder);

}  // namespace haunch
