#include "usual_joint.h"

#include <fmt/core.h>

#include <algorithm>

#include "share.h"

namespace haunch {
namespace {

/// The one nearest to a third of the thickness, the first of two as near.
Length nearest_to_a_third(Length thickness, const std::vector<Length>& sizes) {
  const auto off = [&](Length size) {
    return std::max(size * 3 - thickness, thickness - size * 3);
  };
  return *std::min_element(sizes.begin(), sizes.end(),
                           [&](Length a, Length b) { return off(a) < off(b); });
}

/// How many holes go on a stretch.
std::size_t holes_on(Length stretch, Length bore, const DowelSpread& spread) {
  if (stretch < bore * 2 + spread.wall) return 1;
  std::size_t count = 2;
  const auto apart = [&] {
    return floor_divide(stretch - bore, static_cast<std::int64_t>(count) - 1);
  };
  while (apart() > spread.spacing && stretch >= bore * static_cast<std::int64_t>(count + 1) +
                                                    spread.wall * static_cast<std::int64_t>(count))
    ++count;
  return count;
}

}  // namespace

Reasoned usual_mortise_width(Length thickness, const std::vector<Length>& cutters, bool shops) {
  for (const Length cutter : cutters)
    if (cutter * 3 >= thickness && cutter * 10 <= thickness * 4)
      return {cutter, fmt::format("the smallest {} from a third to 0.4 of the thickness",
                                  shops ? "of the shop's cutters" : "cutter")};
  return {nearest_to_a_third(thickness, cutters),
          fmt::format("the {} nearest to a third of the thickness",
                      shops ? "shop's cutter" : "cutter")};
}

Reasoned in_the_middle(Length thickness, Length width) {
  return {floor_half(thickness - width), "in the middle of the thickness"};
}

Length usual_relish(Length member, Length whole, Length least) {
  return std::max(nearest_multiple(floor_divide(member, 3), whole), least);
}

Length usual_dowel(Length thickness, const std::vector<Length>& dowels) {
  for (const Length dowel : dowels)
    if (dowel * 3 >= thickness && dowel * 2 <= thickness) return dowel;
  return nearest_to_a_third(thickness, dowels);
}

std::vector<Length> dowels_along(Length low, Length stretch, Length bore,
                                 const DowelSpread& spread) {
  const std::size_t count = holes_on(stretch, bore, spread);
  if (count == 1) return {low + floor_half(stretch - bore)};
  std::vector<Length> places{low};
  const Length wood = stretch - bore * static_cast<std::int64_t>(count);
  for (const Length between : share_evenly(wood, count - 1))
    places.push_back(places.back() + bore + between);
  return places;
}

}  // namespace haunch
