// A second opinion on wood that slopes: by asking of single points whether there is wood.
#pragma once

#include <array>

#include "haunch/wood.h"

namespace haunch::test {

/// A place in the assembly, in steps.
using Point = std::array<double, 3>;

bool has_slopes(const Piece& piece);

/// Whether there is wood of the piece at a point. On a face either answer may come.
bool holds(const Piece& piece, const Point& point);

/// Whether two pieces share wood at one of many points: in the region of both blanks, and just
/// inside the slopes of either, 0.002 mm from their faces.
bool share_at_points(const Piece& a, const Piece& b);

/// Whether at each of many points of a box of the assembly there is wood of one of the two pieces,
/// and not of both.
bool just_one_holds(const Piece& a, const Piece& b, const Box& where);

/// The piece's wood in cubic millimetres, by points in a grid of at least `points`.
double counted_volume(const Piece& piece, int points);

/// Whether a prism lies within its piece's blank and has an outline.
bool lies_within(const Prism& prism, const Piece& piece);

}  // namespace haunch::test
