// Round holes bored into wood, and the round pegs that stand in them.
//
// Wood has only flat faces here: a circle of radius r is drawn as a polygon with its corners on it,
// n of them, so many that no side leaves it by more than kBoreTolerance:
//     r (1 - cos(pi / n)) <= kBoreTolerance
// n is a multiple of 4 and corners lie at its four extremes, so that hole and peg measure their
// full diameter along both axes. Holes and pegs of one joint are drawn with the same n: side faces
// side, and the room between them is that of the circles.
#pragma once

#include <string>
#include <vector>

#include "haunch/wood.h"

namespace haunch {

/// How far inside of its circle the side of a drawn hole or peg may lie.
inline constexpr Length kBoreTolerance = Length::from_mm_thousandths(100);

/// The number of corners that a circle of this diameter is drawn with.
int bore_corners(Length diameter);

/// A hole: a circle from `low` on both axes, so wide, in so many corners.
std::vector<Corner> bore_outline(Corner low, Length diameter, int corners);

/// A hole in the box that it fills, along one of its axes.
Prism round_hole(const Box& box, std::size_t along, int corners);

/// What is taken off the four edges of a square piece, along all its length, to make it round.
std::vector<Prism> rounded_to_peg(Length length, Length diameter, int corners);

/// The same of a peg that is driven into its hole and fills it.
std::vector<Prism> rounded_to_fill(Length length, Length diameter, int corners);

}  // namespace haunch
