#include "datum.h"

#include <algorithm>
#include <iterator>

namespace haunch {
namespace {

template <std::size_t kCount>
bool is_one_of(Role role, const Role (&roles)[kCount]) {
  return std::find(std::begin(roles), std::end(roles), role) != std::end(roles);
}

/// Of a leaf or a face frame: its axes are those of that, wherever it stands.
bool is_of_leaf(Role role) {
  constexpr Role kOfLeaf[] = {Role::stile,   Role::rail,  Role::muntin, Role::panel,
                              Role::mullion, Role::glass, Role::bead,   Role::glazing_bar};
  return is_one_of(role, kOfLeaf);
}

/// At an upper end, so that what is worked on it and what is seen of it are below.
bool looks_down(Role role) {
  constexpr Role kAbove[] = {Role::top, Role::top_rail, Role::head, Role::transom, Role::stop};
  return is_one_of(role, kAbove);
}

/// Whether a span across a piece begins or ends at that side of it, and does not go right through.
bool opens_at(Length low, Length high, Length size, bool at_high) {
  return (at_high ? high : low) == (at_high ? size : Length()) && high - low < size;
}

/// What is worked for joints, on the side of a piece across one of its own axes.
std::size_t worked_at(const Piece& piece, std::size_t across, bool at_high) {
  constexpr FeatureKind kOfEnds[] = {FeatureKind::tenon,   FeatureKind::tongue,  FeatureKind::tails,
                                     FeatureKind::sockets, FeatureKind::fingers, FeatureKind::lap,
                                     FeatureKind::mitre};
  const Length size = piece.blank[across];
  std::size_t worked = 0;
  for (const Feature& feature : piece.features) {
    if (feature.joints.empty() ||
        std::find(std::begin(kOfEnds), std::end(kOfEnds), feature.kind) != std::end(kOfEnds))
      continue;
    for (const Box& cut : feature.cuts)
      if (opens_at(cut.low[across], cut.high[across], size, at_high)) ++worked;
    for (const Prism& prism : feature.prisms)
      if (prism.along == across && opens_at(prism.from, prism.to, size, at_high)) ++worked;
  }
  return worked;
}

/// Whether the side that is worked is the high one. Where none is more than the other, that of a
/// piece at the left or at the foot, since what it joins lies to the right of it or above.
bool worked_is_high(const Piece& piece, std::size_t across) {
  const std::size_t high = worked_at(piece, across, true), low = worked_at(piece, across, false);
  if (high != low) return high > low;
  return piece.place.origin[static_cast<std::size_t>(piece.place.axes[across])] == Length();
}

/// Of the side that looks one way along the assembly, whether it is the high one.
bool is_own_high(const Piece& piece, std::size_t own, bool upwards) {
  return upwards != piece.place.backwards[own];
}

bool face_is_high(const Piece& piece) {
  if (is_of_leaf(piece.role)) return false;
  switch (piece.place.axes[2]) {
    case Axis::x:
      return worked_is_high(piece, 2);
    case Axis::y:
      return is_own_high(piece, 2, !looks_down(piece.role));
    case Axis::z:
      return is_own_high(piece, 2, false);
  }
  return false;
}

bool edge_is_high(const Piece& piece) {
  if (piece.role == Role::stile || piece.role == Role::rail) return worked_is_high(piece, 1);
  const bool to_left = is_of_leaf(piece.role) || piece.place.axes[1] == Axis::x;
  return !to_left && is_own_high(piece, 1, false);
}

}  // namespace

Datum datum_of(const Piece& piece) {
  return {face_is_high(piece), edge_is_high(piece)};
}

}  // namespace haunch
