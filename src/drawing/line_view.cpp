#include "line_view.h"

#include <algorithm>

namespace haunch {

std::optional<Extent> extent_of(const LineView& view) {
  std::optional<Extent> extent;
  const auto take = [&](const ViewSpot& spot) {
    if (!extent) extent = Extent{spot, spot};
    extent->low = {std::min(extent->low.u, spot.u), std::min(extent->low.v, spot.v)};
    extent->high = {std::max(extent->high.u, spot.u), std::max(extent->high.v, spot.v)};
  };
  for (const ViewLine& line : view.lines) {
    take(line.from);
    take(line.to);
  }
  for (const CutArea& area : view.areas)
    for (const auto& loop : area.loops)
      std::for_each(loop.begin(), loop.end(), take);
  return extent;
}

}  // namespace haunch
