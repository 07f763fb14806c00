#include "face_bore.h"

#include <utility>

#include "round_bore.h"

namespace haunch {

void bore(Piece& piece, const FaceBore& hole) {
  const Length radius = floor_half(hole.diameter);
  const Box blank = placed_blank(piece);
  Box room;
  for (std::size_t axis = 0; axis < 3; ++axis) {
    room.low[axis] = hole.middle[axis] - radius;
    room.high[axis] = room.low[axis] + hole.diameter;
  }
  room.low[hole.into] = hole.upwards ? blank.low[hole.into] : blank.high[hole.into] - hole.depth;
  room.high[hole.into] = room.low[hole.into] + hole.depth;
  Feature feature = bored_in_face(piece, room, hole.kind, hole.name);
  feature.sizes = {{SizeName::diameter, hole.diameter}, {SizeName::depth, hole.depth}};
  feature.sizes.insert(feature.sizes.end(), hole.told.begin(), hole.told.end());
  piece.features.push_back(std::move(feature));
}

}  // namespace haunch
