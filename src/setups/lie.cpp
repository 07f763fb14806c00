#include "lie.h"

#include <algorithm>

#include "bodies.h"
#include "datum.h"
#include "lines.h"
#include "own_axes.h"

namespace haunch {
namespace {

/// A direction along one axis, in whole numbers. The assembly's axes (right, up, into the
/// thickness) and the machinist's (right, up, to the fence) have one handedness, so that a piece is
/// turned from the one to the other without being mirrored; a piece's own axes can have either.
using Direction = std::array<int, 3>;

constexpr Direction kUp{0, 1, 0}, kTable{0, -1, 0}, kLeft{-1, 0, 0}, kFence{0, 0, 1};
constexpr std::array<Direction, 6> kToward{
    {kLeft, {1, 0, 0}, kTable, kUp, {0, 0, -1}, kFence}};  // as in Toward

Direction across(const Direction& a, const Direction& b) {
  return {a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]};
}

int along(const Direction& a, const Direction& b) {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

/// Out of a side of a piece, in the assembly.
Direction out_of(const Place& place, WorkedSide side) {
  Direction out{};
  const bool upwards = side.from_high != place.backwards[side.into];
  out[static_cast<std::size_t>(place.axes[side.into])] = upwards ? 1 : -1;
  return out;
}

/// The low or the high side along an axis of the assembly.
WorkedSide side_along(const Piece& piece, Axis axis, bool high) {
  const std::size_t own = own_axis(piece.place, axis);
  return {own, high != piece.place.backwards[own]};
}

/// The edge that the middle of a feature, or its nearer side, lies so far from; of what goes in
/// through an edge the face.
WorkedSide edge_at(const Piece& piece, const Feature& feature, std::size_t into, Length distance) {
  const std::size_t axis = 3 - into;
  const std::vector<Box> bodies = bodies_of(feature);
  const auto lies_from = [&](bool high) {
    return std::any_of(bodies.begin(), bodies.end(), [&](const Box& body) {
      const Length middle = body.low[axis] + floor_half(body.extent(axis));
      return high ? piece.blank[axis] - middle == distance ||
                        piece.blank[axis] - body.high[axis] == distance
                  : middle == distance || body.low[axis] == distance;
    });
  };
  return {axis, !lies_from(false) && lies_from(true)};
}

/// Where the worked side and the datum look at the machine.
struct Looks {
  Direction worked, datum;
};

Looks looks_so(const Holding& held) {
  if (held.worked == WorkedLooks::up) return {kUp, kFence};
  if (held.worked == WorkedLooks::down) return {kTable, kFence};
  return held.datum == DatumLies::on_table ? Looks{kFence, kTable} : Looks{kLeft, kFence};
}

}  // namespace

DatumSide datum_side(const Assembly& wood, const Run& run, const std::vector<NamedSize>& settings) {
  const Piece& piece = wood.pieces[run.piece];
  const Place& group = wood.groups[piece.group].at;
  for (const NamedSize& told : settings) {
    DatumSide datum;
    if (told.name == SizeName::from_face)
      datum.side = side_along(piece, group.axes[2], group.backwards[2]);
    else if (told.name == SizeName::from_front)
      datum = {side_along(piece, Axis::z, false), "front edge"};
    else if (told.name == SizeName::from_back)
      datum = {side_along(piece, Axis::z, true), "back edge"};
    else if (told.name == SizeName::from_edge &&
             (run.side.into == 2 || piece.features[run.feature].kind == FeatureKind::pin_hole))
      datum = {edge_at(piece, piece.features[run.feature], run.side.into, told.size), "that edge"};
    else
      continue;
    if (datum.side.into != run.side.into) return datum;
  }
  if (run.side.into == 2) return {{1, datum_of(piece).edge_high}, "face edge"};
  return {};
}

Lie::Lie(const Place& place, WorkedSide worked, WorkedSide datum_side, const Holding& held) {
  const Looks there = looks_so(held);
  const Direction out = out_of(place, worked);
  const Direction datum = out_of(place, datum_side);
  const Direction third = across(out, datum);
  const Direction third_there = across(there.worked, there.datum);
  for (std::size_t into = 0; into < 3; ++into)
    for (const bool high : {false, true}) {
      const Direction its = out_of(place, {into, high});
      Direction looks{};
      for (std::size_t axis = 0; axis < 3; ++axis)
        looks[axis] = along(its, out) * there.worked[axis] + along(its, datum) * there.datum[axis] +
                      along(its, third) * third_there[axis];
      for (std::size_t toward = 0; toward < kToward.size(); ++toward)
        if (looks == kToward[toward]) sides_[toward] = {into, high};
    }
}

Toward Lie::of(WorkedSide side) const {
  std::size_t toward = 0;
  while (!(sides_[toward] == side))
    ++toward;
  return static_cast<Toward>(toward);
}

WorkedSide side_of_line(const Piece& piece, const Run& run) {
  const std::size_t along = across_axes(run.side.into).u;
  switch (run.from) {
    case Line::foot:
    case Line::lower_end:
    case Line::left_end:
    case Line::front_end:
    case Line::rear_end:
      return {along, false};
    case Line::lower_edge:
    case Line::left_edge:
      return {1, false};
    case Line::inner_face:
      return {2, !inner_face_is_low(piece)};
    case Line::lower_face:
      return {2, datum_of(piece).face_high};
    // Of what the piece is a part of: told along the assembly's axis.
    case Line::left:
    case Line::sill:
      return {along, piece.place.backwards[along]};
    case Line::top:
    case Line::right:
    case Line::head:
    case Line::transom:
      return {along, !piece.place.backwards[along]};
  }
  return {along, false};
}

}  // namespace haunch
