// What a spec says of an opening that was measured all round: from there on it is the largest
// square one within it.
#pragma once

#include <string_view>
#include <vector>

#include "document.h"
#include "spec.h"

namespace haunch {

/// The keys of one opening.
struct OpeningKeys {
  SizeKey width, height;
  Key widths, heights, diagonals;
  SizeKey one_width, one_height, one_diagonal;  // an item of each
};
inline constexpr OpeningKeys kLeafOpening{
    "opening.width",     "opening.height",   "opening.widths",    "opening.heights",
    "opening.diagonals", "opening.widths[]", "opening.heights[]", "opening.diagonals[]"};
inline constexpr OpeningKeys kWallOpening{
    "frame.wall_opening.width",     "frame.wall_opening.height",     "frame.wall_opening.widths",
    "frame.wall_opening.heights",   "frame.wall_opening.diagonals",  "frame.wall_opening.widths[]",
    "frame.wall_opening.heights[]", "frame.wall_opening.diagonals[]"};

/// Puts the width and height of the square opening into the spec, and what reaches beyond it.
/// `root`: what the table has before the keys of this spec. Nothing where nothing was measured so;
/// problems where the readings are not complete, or cannot be of one opening.
std::vector<Problem> take_found_opening(Spec& spec, const OpeningKeys& keys,
                                        std::string_view root = {});

/// How far the second diagonal of an opening is from going with the other readings, where they
/// disagree; see found_opening.h.
std::optional<Length> disagreement(const Spec& spec, const OpeningKeys& keys);

/// A difference of readings to 0.1 mm or 1/64 in, as it is told.
Length told_of(Length reading, Unit unit);

}  // namespace haunch
