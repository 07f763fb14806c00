#include "alike.h"

#include <algorithm>
#include <vector>

#include "junction.h"
#include "polyhedron.h"

namespace haunch {
namespace {

/// What one cut takes away, as figures to be compared.
using Figures = std::vector<Length>;

Figures figures_of(const Box& box) {
  return {box.low[0], box.low[1], box.low[2], box.high[0], box.high[1], box.high[2]};
}

/// A place along the assembly's axes, as seen from a junction.
Triple seen_from(const Junction& junction, const Triple& place) {
  return junction.from_assembly(Box{place, place}).low;
}

/// From where to where a prism runs, and its outline. That begins at its least corner and goes on
/// to the lesser of the two beside it, wherever and whichever way round it was drawn.
Figures figures_of(const Prism& prism, const Junction& junction) {
  const auto [u, v] = across_axes(prism.along);
  Figures all = figures_of(junction.from_assembly(bounds_of(prism)));
  std::vector<Triple> corners;
  for (const Corner& corner : prism.outline) {
    Triple place = junction.origin;
    place[u] = corner.u;
    place[v] = corner.v;
    corners.push_back(seen_from(junction, place));
  }
  const std::size_t count = corners.size();
  const auto first =
      static_cast<std::size_t>(std::min_element(corners.begin(), corners.end()) - corners.begin());
  const bool onwards = corners[(first + 1) % count] < corners[(first + count - 1) % count];
  const std::size_t stride = onwards ? 1 : count - 1;
  for (std::size_t i = 0; i < count; ++i) {
    const Triple& corner = corners[(first + i * stride) % count];
    all.insert(all.end(), corner.begin(), corner.end());
  }
  return all;
}

/// All that is cut out of a piece before fittings are let in, as seen from a junction.
std::vector<Figures> cuts_of(const Junction& junction, const Piece& piece) {
  std::vector<Figures> cuts;
  for (const Feature& feature : piece.features) {
    if (feature.fitting) continue;
    for (const Box& cut : feature.cuts)
      cuts.push_back(figures_of(junction.from_assembly(placed(cut, piece.place))));
    for (const Prism& prism : feature.prisms)
      cuts.push_back(figures_of(placed(prism, piece.place), junction));
  }
  std::sort(cuts.begin(), cuts.end());
  return cuts;
}

/// Whether two joints are to have the same clearances, of whatever size.
bool are_designed_alike(const Joint& a, const Joint& b) {
  const Clearances& one = a.design;
  const Clearances& other = b.design;
  return a.kind == b.kind && a.arched == b.arched && a.has_shoulder == b.has_shoulder &&
         a.tenon.has_value() == b.tenon.has_value() &&
         one.edges.has_value() == other.edges.has_value() &&
         one.bottom.has_value() == other.bottom.has_value() &&
         one.bite.has_value() == other.bite.has_value() &&
         one.bearing.has_value() == other.bearing.has_value() &&
         one.edge.has_value() == other.edge.has_value();
}

}  // namespace

bool are_alike(const Assembly& assembly, const Joint& a, const Joint& b) {
  if (!are_designed_alike(a, b)) return false;
  const Junction here(assembly, a);
  const Junction there(assembly, b);
  const auto piece = [&](std::size_t number) -> const Piece& { return assembly.pieces[number]; };
  return here.blank(piece(a.receives)) == there.blank(piece(b.receives)) &&
         here.blank(piece(a.enters)) == there.blank(piece(b.enters)) &&
         cuts_of(here, piece(a.receives)) == cuts_of(there, piece(b.receives)) &&
         cuts_of(here, piece(a.enters)) == cuts_of(there, piece(b.enters));
}

}  // namespace haunch
