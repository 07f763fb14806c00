#include "cut_from.h"

#include <algorithm>
#include <vector>

#include "solid.h"

namespace haunch {
namespace {

/// Ways to lay a piece along another by the cuts of one kind in both: more are not tried.
constexpr std::size_t kMostByCuts = 12;

/// What a laying is tried by: no longer than it takes to look at so many blocks against as many.
constexpr std::size_t kMostBlocks = 20'000;

void add_once(std::vector<Length>& shifts, Length shift) {
  if (std::find(shifts.begin(), shifts.end(), shift) == shifts.end()) shifts.push_back(shift);
}

/// So that cuts that were made already come where they are wanted.
void add_by_cuts(std::vector<Length>& shifts, const Piece& piece, const Piece& old,
                 std::size_t axis) {
  for (const Feature& wanted : piece.features)
    for (const Feature& made : old.features) {
      if (wanted.kind != made.kind || wanted.cuts.empty() || made.cuts.empty()) continue;
      if (shifts.size() >= kMostByCuts) return;
      add_once(shifts, made.cuts.front().low[axis] - wanted.cuts.front().low[axis]);
    }
}

/// How far a piece may be moved along one axis of another: flush at either side, in the middle, or
/// cut upon cut. A side that bears a strip must come upon its strip.
std::vector<Length> shifts_along(const Piece& piece, const Piece& old, std::size_t axis) {
  const Length spare = old.blank[axis] - piece.blank[axis];
  std::vector<Length> shifts{Length()};
  add_once(shifts, spare);
  add_once(shifts, floor_half(spare));
  add_by_cuts(shifts, piece, old, axis);
  std::erase_if(shifts, [&](Length shift) {
    if (shift < Length() || shift > spare) return true;
    return std::any_of(old.strips.begin(), old.strips.end(), [&](const EdgeStrip& strip) {
      const std::size_t across = strip.along == 0 ? 1 : 0;
      return across == axis && shift != (strip.high ? spare : Length());
    });
  });
  return shifts;
}

Wood wood_at(const Piece& piece, const Triple& at) {
  Piece laid = piece;
  laid.place = Place{at};
  return solid_of(laid, Fittings::let_in).wood;
}

std::size_t blocks_in(const Wood& wood) {
  return wood.boxes.size() + wood.sloping.size();
}

bool lies_within(Wood wood, const Wood& other) {
  for (const Box& box : other.boxes)
    take_out(wood, box);
  for (const Polyhedron& block : other.sloping)
    take_out(wood, block);
  return wood.empty();
}

}  // namespace

bool can_be_cut_from(const Piece& piece, const Piece& old) {
  if (piece.matter != old.matter || piece.matter == Matter::glass || piece.strips != old.strips)
    return false;
  // Where it would lie further in, cuts of the old one would weaken its horns.
  const bool has_horns = piece.horn > Length();
  if (has_horns && (piece.horn > old.horn || piece.blank[0] != old.blank[0])) return false;
  const Wood stands = wood_at(old, {});
  for (const Length x : shifts_along(piece, old, 0))
    for (const Length y : shifts_along(piece, old, 1))
      for (const Length z : shifts_along(piece, old, 2)) {
        Wood wanted = wood_at(piece, {x, y, z});
        if (blocks_in(wanted) * blocks_in(stands) > kMostBlocks) return false;
        if (lies_within(std::move(wanted), stands)) return true;
      }
  return false;
}

}  // namespace haunch
