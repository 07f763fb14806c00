#include "follow.h"

#include <algorithm>

#include "rounding.h"

namespace haunch {
namespace {

/// An edge of the leaf: along which axis, and at the high end of the other one or at the low one.
struct LeafEdge {
  std::size_t along;
  bool high;
};

/// What is taken off the edge at a place along it.
struct Planed {
  Length at_low, at_high;
  Length length;  // of the edge

  Length at(Length place) const {
    const double share = static_cast<double>(place.steps()) / static_cast<double>(length.steps());
    return at_low + nearest_step(static_cast<double>((at_high - at_low).steps()) * share);
  }
};

/// The wedge that a piece loses, in the leaf's x and y: with only three corners where it begins at
/// nothing.
std::vector<Corner> wedge_of(const Box& blank, LeafEdge edge, const Planed& planed) {
  const std::size_t across = 1 - edge.along;
  const Length from = blank.low[edge.along], to = blank.high[edge.along];
  const Length outside = edge.high ? blank.high[across] : blank.low[across];
  const auto corner = [&](Length place, Length in) {
    const Length level = edge.high ? outside - in : outside + in;
    return edge.along == 0 ? Corner{place, level} : Corner{level, place};
  };
  std::vector<Corner> outline{corner(from, Length()), corner(to, Length())};
  if (planed.at(to) > Length()) outline.push_back(corner(to, planed.at(to)));
  if (planed.at(from) > Length()) outline.push_back(corner(from, planed.at(from)));
  return outline;
}

/// Of pieces of leaves, whose axes all run towards higher figures.
std::vector<Corner> in_piece(std::vector<Corner> outline, const Place& place) {
  for (Corner& corner : outline) {
    const Length x = corner.u - place.origin[0], y = corner.v - place.origin[1];
    corner = place.axes[0] == Axis::y ? Corner{y, x} : Corner{x, y};
  }
  return outline;
}

void plane_edge(Assembly& leaf, LeafEdge edge, const Taper& low_to_high) {
  const Planed planed{low_to_high.first, low_to_high.last, leaf.size[edge.along]};
  if (planed.at_low == Length() && planed.at_high == Length()) return;
  const std::size_t across = 1 - edge.along;
  for (Piece& piece : leaf.pieces) {
    const Box blank = placed_blank(piece);
    if (edge.high ? blank.high[across] != leaf.size[across] : blank.low[across] != Length())
      continue;
    std::vector<Corner> outline = wedge_of(blank, edge, planed);
    const Length most =
        std::max(planed.at(blank.low[edge.along]), planed.at(blank.high[edge.along]));
    if (most == Length()) continue;
    Feature feature{FeatureKind::planed_taper, {}, {}, {{SizeName::depth, most}}};
    feature.prisms.push_back({2, Length(), piece.blank[2], in_piece(outline, piece.place)});
    piece.features.push_back(std::move(feature));
    leaf.beyond.push_back({2, Length(), leaf.size[2], std::move(outline)});
  }
}

/// From the lower or left end on, as places along an edge are counted.
Taper from_below(Taper from_head) {
  return {from_head.last, from_head.first};
}

}  // namespace

void plane_to_follow(Assembly& leaf) {
  if (leaf.fits.empty() || !leaf.fits.front().found) return;
  const AsFound found = *leaf.fits.front().found;
  if (!found.follow) return;
  plane_edge(leaf, {1, false}, from_below(taper_along(found.left, true)));
  plane_edge(leaf, {1, true}, from_below(taper_along(found.right, true)));
  plane_edge(leaf, {0, true}, taper_along(found.head, true));
  plane_edge(leaf, {0, false}, taper_along(found.foot, true));
}

}  // namespace haunch
