// Dimensions (ISO 129): figures above their line, read from below or from the right; oblique
// strokes at the ends of each.
#pragma once

#include <string>
#include <vector>

#include "picture.h"
#include "text_table.h"

namespace haunch {

/// Lengths one after the other along a line, as they stand on the paper.
struct DimensionChain {
  bool upright = false;        // else level
  std::vector<double> places;  // along the line, rising
  std::vector<Length> links;   // one fewer
};

/// Figures of which the sum is the whole as it is printed: as fine as that takes; where nothing
/// does, "about" stands before those that are rounded.
std::vector<std::string> chain_figures(const std::vector<Length>& links,
                                       const LengthPrinter& lengths);

/// Where figures go that are wider than what they measure: in a row of their own, above the others
/// or below the line.
enum class TightFigures : unsigned char { above, below };

/// A chain that lies along the axis of the paper, and how far it reaches to both sides of its line.
struct DrawnChain {
  Picture picture;
  double above = 0, below = 0;
};
DrawnChain draw_chain(const DimensionChain& chain, const LengthPrinter& lengths,
                      TightFigures tight);
inline constexpr double kPastChain = 1.5;  // that lines from the view go on past it

}  // namespace haunch
