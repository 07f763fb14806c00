// A case made by hand, from boxes of board: 600 wide, 720 high, 560 deep outside, 18 thick, open at
// its front. Its clear opening is 564 x 684. Nothing in it comes from a spec.
#pragma once

#include <string>
#include <string_view>

#include "findings.h"
#include "vocabulary.h"

namespace haunch::test {

/// A board that fills a box. Its grain runs along x, or upright where it is a side.
inline std::size_t add_board(Assembly& wood, const std::string& name, Role role, const Box& box,
                             std::size_t group) {
  const bool upright = role == Role::side || role == Role::partition;
  const bool front = role == Role::drawer_front || role == Role::panel;
  Piece piece;
  piece.mark = "P" + std::to_string(wood.pieces.size() + 1);
  piece.name = name;
  piece.role = role;
  piece.group = group;
  piece.place.origin = box.low;
  if (upright) {
    piece.place.axes = {Axis::y, Axis::z, Axis::x};
    piece.blank = {box.extent(1), box.extent(2), box.extent(0)};
  } else if (front) {
    piece.place.axes = {Axis::x, Axis::y, Axis::z};
    piece.blank = {box.extent(0), box.extent(1), box.extent(2)};
  } else {
    piece.place.axes = {Axis::x, Axis::z, Axis::y};
    piece.blank = {box.extent(0), box.extent(2), box.extent(1)};
  }
  wood.pieces.push_back(piece);
  return wood.pieces.size() - 1;
}

inline constexpr std::size_t kCase = 1;

inline Assembly box_case() {
  Assembly wood;
  wood.groups = {{GroupKind::cabinet, "cabinet", {}, {}}, {GroupKind::carcase, "case", 0, {}}};
  wood.size = {mm(600), mm(720), mm(560)};
  wood.open = {box(18, 18, 0, 582, 702, 560)};
  add_board(wood, "left side", Role::side, box(0, 0, 0, 18, 720, 560), kCase);
  add_board(wood, "right side", Role::side, box(582, 0, 0, 600, 720, 560), kCase);
  add_board(wood, "bottom", Role::bottom, box(18, 0, 0, 582, 18, 560), kCase);
  add_board(wood, "top", Role::top, box(18, 702, 0, 582, 720, 560), kCase);
  return wood;
}

/// A group of its own in it, with how it closes its opening.
inline std::size_t add_front_group(Assembly& wood, GroupKind kind, const std::string& path,
                                   Fit fit) {
  wood.groups.push_back({kind, path, 0, {}});
  fit.stands = StandsIn::front;
  fit.group = wood.groups.size() - 1;
  fit.other = kCase;
  wood.fits.push_back(fit);
  return fit.group;
}

/// All findings of one check that are not ok, of the case's wood.
inline std::vector<std::string> doubts(const Assembly& wood, std::string_view prefix) {
  std::vector<std::string> found;
  for (const std::string& check : doubted(wood))
    if (check.starts_with(prefix)) found.push_back(check);
  return found;
}

}  // namespace haunch::test
