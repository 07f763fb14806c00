// Parts in whichever of their ways they are made, and a few sizes in place of many.
//
//   PieceWay, PartWays    what a part may be made of
//   fewer_sizes           the same parts, none larger, in few sizes
#pragma once

#include <compare>
#include <cstdint>
#include <vector>

namespace haunch::lumber {

/// A way to make a part: so many pieces of one size, from boards of one thickness. In steps, kerf
/// included.
struct PieceWay {
  std::size_t thickness = 0;
  std::int64_t length = 0, width = 0;
  bool turnable = false;
  std::int64_t pieces = 1;

  friend auto operator<=>(const PieceWay&, const PieceWay&) = default;
};

/// Parts that are made in the same ways.
struct PartWays {
  std::int64_t parts = 0;
  std::vector<PieceWay> ways;
};

/// Parts of nearly the same sizes are put together, at the least of their lengths and widths, until
/// there are no more than `most` ways in all; what the smaller ones need bounds what the real ones
/// need. Empty where the ways differ in more than their sizes too often for that.
std::vector<PartWays> fewer_sizes(std::vector<PartWays> parts, std::size_t most);

}  // namespace haunch::lumber
