// What is usual for the joints of framed members, by their thickness and width: of a leaf, and of
// whatever else has rails.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "haunch/length.h"

namespace haunch {

/// A size, and why it is so.
struct Reasoned {
  Length size;
  std::string why;
};

/// Of the cutters the smallest from a third to four tenths of the thickness, else the one nearest
/// to a third. `shops`: they are the shop's own.
Reasoned usual_mortise_width(Length thickness, const std::vector<Length>& cutters, bool shops);

Reasoned in_the_middle(Length thickness, Length width);

/// What a tenon loses at its member's outer edge, so that the end of what it enters stays whole: a
/// third of the member, to the nearest `whole`, at least `least`.
Length usual_relish(Length member, Length whole, Length least);

/// Of the dowels that are sold the least from a third to half of the thickness, else the one
/// nearest to a third (the rule of thirds and halves).
Length usual_dowel(Length thickness, const std::vector<Length>& dowels);

/// How dowels are spread over an end.
struct DowelSpread {
  Length edge;     // from an edge to the first hole
  Length wall;     // wood between two holes
  Length spacing;  // the most from middle to middle
};

/// Near walls of the holes on a stretch that begins at `low` and has room for one at least: two
/// where there is room, one more wherever they would stand too far apart.
std::vector<Length> dowels_along(Length low, Length stretch, Length bore,
                                 const DowelSpread& spread);

}  // namespace haunch
