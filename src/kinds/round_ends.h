// Mortises whose ends are left round by a cutter, and what a tenon must be to go in.
//
// Seen along the mortise's depth, each end has two quarter circles of radius r, half the cutter,
// from the side walls to the end. At z from a side wall (z < r) the wood stands
//     x(z) = r - sqrt(r^2 - (r - z)^2)
// in from the end. A square-edged tenon that leaves s beside each cheek meets it with its corners,
// at z = s: of a mortise L long, L - 2 x(s) is free to it.
#pragma once

#include <vector>

#include "haunch/wood.h"

namespace haunch {

/// A quarter circle is drawn in so many straight lines, always on the side of the wood. They leave
/// it by no more than radius * (1 - cos(90 degrees / 2 / parts)), a four-hundredth of the radius.
inline constexpr int kPartsOfQuarter = 12;

/// x(z): how far the wood of a round end stands in at so far from the side wall; to the step above.
Length end_inset(Length radius, Length from_wall);

/// What is free to a square-edged tenon in a mortise with round ends, that leaves `play` beside
/// each cheek.
Length free_width(Length mortise_length, Length radius, Length play);

/// A rectangle seen along a prism: u along the mortise's length or the tenon's width, v across its
/// thickness.
struct Outline {
  Length u0, u1, v0, v1;
};

/// The two ends of a slot with round ends, from their straight part on, along `along` of the piece
/// from `from` to `to`. `play`: beside each cheek of the tenon that it takes, where the drawing has
/// a corner.
std::vector<Prism> slot_ends(const Outline& slot, Length radius, Length play, std::size_t along,
                             Length from, Length to);

/// What is taken off both corners of one edge of a tenon or its stock, the one at u0 or that at u1,
/// to round it with `radius`, along its piece's length from `from` to `to`.
std::vector<Prism> rounded_edge(const Outline& tenon, bool at_high, Length radius, Length from,
                                Length to);

}  // namespace haunch
