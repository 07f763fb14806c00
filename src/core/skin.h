// Where wood ends: the edges round its skin, in each plane by itself.
//
// Wood is boxes and blocks that touch. Each of their facets counts +1 in its plane where it looks
// one way and -1 where it looks the other. Where two lie back to back they add up to 0, so that
// what is left of the sum is the skin; and as the edge of a sum is the sum of the edges, only
// edges need be added up, cut at all corners first. A face that goes through many blocks comes out
// as one.
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "solid.h"

namespace haunch {

/// Corners nearer than this are one, in steps: far more than what places along a slope are off by,
/// and less than any two places on the grid are apart.
inline constexpr double kOneCorner = 0.25;

/// A stretch of the skin's edge between two corners with none between them. The skin lies at its
/// left, seen from outside.
struct SkinEdge {
  std::size_t from = 0, to = 0;  // corners
  std::size_t plane = 0;
  bool along_normal = true;  // whether the skin looks the way of the plane's normal

  friend bool operator==(const SkinEdge&, const SkinEdge&) = default;
};

struct Skin {
  std::vector<Spot> corners;
  std::vector<HalfSpace> planes;
  std::vector<SkinEdge> edges;  // by plane
};

/// Nothing where blocks overlap, so that it can't be told.
std::optional<Skin> skin_of(const Wood& wood);

}  // namespace haunch
