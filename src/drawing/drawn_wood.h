// A piece as it is drawn: its wood where it stands on the drawing, and the edges of that.
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "line_view.h"
#include "shell.h"

namespace haunch {

/// A straight edge between two faces.
struct DrawnEdge {
  Spot from, to;
  HalfSpace one, other;
  LineOf of = LineOf::seen;  // cut and broken ones are so wherever they are not hidden
  bool smooth = false;       // within a curve: a line only where the wood ends there as seen
};

/// Where a piece can't be told by a shell (shell.h), its edges are those of the blocks that it is
/// kept as: nothing is missing then, but lines stand where blocks meet.
struct DrawnWood {
  std::size_t piece = 0;      // by index into Assembly::pieces
  std::optional<Axis> grain;  // along which it runs, of the assembly; none of board and glass
  Wood wood;
  std::optional<Shell> shell;
  std::vector<DrawnEdge> edges;
};

/// With its fittings let in.
DrawnWood drawn_of(const Assembly& assembly, std::size_t piece);

/// Every piece of it. Once for all views: telling the edges takes longer than a view.
std::vector<DrawnWood> drawn_of(const Assembly& assembly);

/// Elsewhere by so much along each of the assembly's axes.
void move_by(DrawnWood& drawn, const Triple& by);

/// What lies within a region; nothing where there is no wood. Where wood goes on beyond it, its
/// edges there are broken ones; but where that is cut which looks this way, they are cut.
std::optional<DrawnWood> within(const DrawnWood& drawn, const Box& region,
                                const std::optional<Way>& cut = {});

}  // namespace haunch
