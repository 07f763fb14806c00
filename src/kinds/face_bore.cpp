#include "face_bore.h"

#include "round_bore.h"

namespace haunch {
namespace {

/// The box that a hole fills, in the assembly.
Box room_of(const Piece& piece, const FaceBore& hole) {
  const Length radius = floor_half(hole.diameter);
  const Box blank = placed_blank(piece);
  Box room;
  for (std::size_t axis = 0; axis < 3; ++axis) {
    room.low[axis] = hole.middle[axis] - radius;
    room.high[axis] = room.low[axis] + hole.diameter;
  }
  room.low[hole.into] = hole.upwards ? blank.low[hole.into] : blank.high[hole.into] - hole.depth;
  room.high[hole.into] = room.low[hole.into] + hole.depth;
  return room;
}

}  // namespace

Feature bored(const Piece& piece, const FaceBore& hole) {
  constexpr std::size_t kThickness = 2;
  const Box own = in_own_axes(room_of(piece, hole), piece.place);
  Feature feature;
  feature.kind = hole.kind;
  feature.fitting = Fitting{hole.name, kThickness, own.high[kThickness] == piece.blank[kThickness]};
  feature.prisms = {round_hole(own, kThickness, bore_corners(own.extent(0)))};
  feature.sizes = {{SizeName::diameter, hole.diameter}, {SizeName::depth, hole.depth}};
  feature.sizes.insert(feature.sizes.end(), hole.told.begin(), hole.told.end());
  return feature;
}

void bore(Piece& piece, const FaceBore& hole) {
  piece.features.push_back(bored(piece, hole));
}

}  // namespace haunch
