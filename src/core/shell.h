// A piece of wood told by its faces, edges and corners, as drawings and machines take it: what
// solid.h tells by boxes and blocks.
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "solid.h"

namespace haunch {

/// Straight, between two corners. Two faces meet in it, that run along it once each way.
struct ShellEdge {
  std::size_t from = 0, to = 0;
};

/// An edge as a face runs along it.
struct EdgeUse {
  std::size_t edge = 0;
  bool forwards = true;
};

using ShellLoop = std::vector<EdgeUse>;

/// A flat face: its outer loop counter-clockwise seen from outside, those of its holes clockwise.
struct ShellFace {
  HalfSpace side;  // its normal looks out of the wood
  ShellLoop outer;
  std::vector<ShellLoop> holes;
};

/// A closed shell, in steps. Each face is as large as it can be: two that meet in an edge never lie
/// in one plane. No corner stands within an edge.
///
/// Where wood meets wood in no more than an edge or a corner, the two go separate ways: that edge
/// or corner is there twice, once for each.
struct Shell {
  std::vector<Spot> corners;
  std::vector<ShellEdge> edges;
  std::vector<ShellFace> faces;
  std::size_t bodies = 0;  // parts that hang together; a void within counts as one more
};

/// Nothing where there is no wood, or none whose faces meet edge to edge: slivers thinner than
/// kOneCorner.
std::optional<Shell> shell_of(const Wood& wood);

/// The corner that an edge, run along so, starts from.
inline std::size_t start_of(const Shell& shell, const EdgeUse& use) {
  const ShellEdge& edge = shell.edges[use.edge];
  return use.forwards ? edge.from : edge.to;
}

/// In cubic millimetres, reckoned from the faces (the divergence theorem).
double volume_of(const Shell& shell);

}  // namespace haunch
