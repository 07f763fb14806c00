// What lies between or above the curves of an arch, as outlines in a piece's own axes.
#pragma once

#include <vector>

#include "arch.h"
#include "haunch/wood.h"

namespace haunch {

/// Two curves, so far outward from an arch.
struct Curves {
  Length inner, outer;
};

/// A curve from x to x, with its first and its last corner on the curve itself, wherever it ends.
std::vector<Corner> line_to_ends(const Arch& arch, Length outward, Length from, Length to,
                                 Heights heights);

/// What lies between two curves from sight edge to sight edge, and as far as `past` beyond these.
/// There the arch itself goes on as the lower edge of its rail.
std::vector<Corner> ring(const Arch& arch, const Curves& curves, Length past);

/// What stands above a line of chords, to a height that one of them may touch: left and right of
/// its highest corner.
std::vector<std::vector<Corner>> above(const std::vector<Corner>& line, Length top);

/// An outline in the leaf's x and y, through a piece's thickness from one place to another.
Prism across_thickness(std::vector<Corner> outline, const Piece& piece, Length from, Length to);

}  // namespace haunch
