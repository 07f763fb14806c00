#include "bench.h"

namespace haunch {
namespace {

/// Whether length, width and thickness of a piece, as it stands, are a right-handed three.
bool is_right_handed(const Place& place) {
  bool right_handed = false;  // the assembly's own are not
  for (std::size_t axis = 0; axis < 3; ++axis) {
    if (place.backwards[axis]) right_handed = !right_handed;
    for (std::size_t before = 0; before < axis; ++before)
      if (place.axes[before] > place.axes[axis]) right_handed = !right_handed;
  }
  return right_handed;
}

}  // namespace

Place on_bench(const Piece& piece) {
  Place place;
  place.backwards[2] = !datum_of(piece).face_high;
  place.backwards[1] = place.backwards[2] == is_right_handed(piece.place);
  for (const std::size_t axis : {1U, 2U})
    if (place.backwards[axis]) place.origin[axis] = piece.blank[axis];
  return place;
}

}  // namespace haunch
