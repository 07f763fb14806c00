// What stands in a case that has moved: each part settles again on what bears it.
#include <algorithm>

#include "family.h"

namespace haunch {
namespace {

bool overlap(const Box& a, const Box& b, std::size_t axis) {
  return a.low[axis] < b.high[axis] && b.low[axis] < a.high[axis];
}

void shift(Assembly& moved, std::size_t group, std::size_t axis, Length by) {
  for (Piece& piece : moved.pieces)
    if (is_within(moved, piece.group, group)) piece.place.origin[axis] += by;
}

/// Its pieces, and those that are none of it.
struct Apart {
  std::vector<std::size_t> own, others;
};

Apart apart(const Assembly& wood, std::size_t group) {
  Apart all;
  for (std::size_t piece = 0; piece < wood.pieces.size(); ++piece)
    (is_within(wood, wood.pieces[piece].group, group) ? all.own : all.others).push_back(piece);
  return all;
}

/// How much nearer something else has come to a group at one side, of what was so far from it there
/// as built; the most.
std::optional<Length> nearer(const Assembly& moved, const Assembly& built, std::size_t group,
                             Way way, Length room) {
  const std::size_t u = (way.axis + 1) % 3;
  const std::size_t v = (way.axis + 2) % 3;
  const auto between = [&](const Assembly& wood, std::size_t own, std::size_t other) {
    const Box a = placed_blank(wood.pieces[own]);
    const Box b = placed_blank(wood.pieces[other]);
    return way.upwards ? b.low[way.axis] - a.high[way.axis] : a.low[way.axis] - b.high[way.axis];
  };
  const auto [own, others] = apart(built, group);
  std::optional<Length> most;
  for (const std::size_t mine : own)
    for (const std::size_t other : others) {
      const Box a = placed_blank(built.pieces[mine]);
      const Box b = placed_blank(built.pieces[other]);
      if (between(built, mine, other) != room || !overlap(a, b, u) || !overlap(a, b, v)) continue;
      const Length by = room - between(moved, mine, other);
      most = most ? std::max(*most, by) : by;
    }
  return most;
}

/// A drawer lies on what it runs on; hinges keep a leaf's gap at their side.
void seat_front(Assembly& moved, const Assembly& built, const Fit& front) {
  if (built.groups[front.group].kind == GroupKind::drawer) {
    if (const auto up = nearer(moved, built, front.group, {1, false}, Length()))
      shift(moved, front.group, 1, *up);
  } else if (const Swing* swing = front.swing()) {
    const Length room = swing->at_high ? front.room.right : front.room.left;
    if (const auto by = nearer(moved, built, front.group, {0, swing->at_high}, room))
      shift(moved, front.group, 0, swing->at_high ? -*by : *by);
  }
}

}  // namespace

void seat_anew(Assembly& moved, const Assembly& built) {
  for (std::size_t group = 1; group < built.groups.size(); ++group) {
    if (built.groups[group].kind != GroupKind::face_frame) continue;
    // Its back lies on the case's front edges.
    shift(moved, group, 2,
          placed_blanks(built, group).high[2] - placed_blanks(moved, group).high[2]);
  }
  for (const Fit* front : fits_that_stand(built, StandsIn::front))
    seat_front(moved, built, *front);
}

}  // namespace haunch
