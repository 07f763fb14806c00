// The wood of a piece where it stands: boxes of the assembly, blank less cuts.
#pragma once

#include <optional>
#include <vector>

#include "haunch/wood.h"

namespace haunch {

/// A piece in the assembly's axes.
struct Solid {
  Box blank;
  std::vector<Box> wood;  // disjoint but for their faces
};

Solid solid_of(const Piece& piece);
std::vector<Solid> solids_of(const Assembly& assembly);

/// Takes `cut` out of each of `boxes`, which stay disjoint.
void take_out(std::vector<Box>& boxes, const Box& cut);

/// What `a` and `b` have in common, if more than a face.
std::optional<Box> common(const Box& a, const Box& b);

/// The parts of `boxes` inside `region`.
std::vector<Box> clipped(const std::vector<Box>& boxes, const Box& region);

/// Whether the two overlap as seen along `axis`, by more than an edge.
bool in_shadow(const Box& a, const Box& b, std::size_t axis);

/// A way along one axis.
struct Way {
  std::size_t axis = 0;
  bool upwards = true;
};

/// The least distance from a box of `from` to one of `to` that goes on beyond it this way and
/// stands in its shadow; negative where the two overlap. Empty when there is none.
std::optional<Length> gap(const std::vector<Box>& from, const std::vector<Box>& to, Way way);

}  // namespace haunch
