// What the pages of joinery have in common: the names of edges and ends, and figures that a machine
// is set to with all that is run on them.
#pragma once

#include <algorithm>
#include <string>
#include <vector>

#include "haunch/wood.h"
#include "shoulders.h"

namespace haunch {

using Marks = std::vector<std::string>;

inline void add_once(Marks& marks, const std::string& mark) {
  if (std::find(marks.begin(), marks.end(), mark) == marks.end()) marks.push_back(mark);
}

inline bool is_upright(const Piece& piece) {
  return piece.place.axes[0] == Axis::y;
}

/// The name of an edge across the piece's width as it stands in the leaf.
inline std::string edge_name(const Piece& piece, bool low) {
  if (is_upright(piece)) return low ? "left" : "right";
  return low ? "lower" : "upper";
}

/// The same, but of a stile, which is worked on one edge only, its face edge, so that both of a
/// pair read alike.
inline std::string worked_edge(const Piece& piece, bool low) {
  return piece.role == Role::stile ? "face" : edge_name(piece, low);
}

/// Whether a joint's piece comes in through a face of what receives it, as in frames, whose pieces
/// have their width from the face of the frame to its back.
inline bool comes_through_face(const Piece& receives, const Heading& heading) {
  return receives.place.axes[2] == heading.axis;
}

/// That face: of a jamb the inner one, so that both of a pair read alike.
inline std::string worked_face(const Piece& piece, bool low) {
  if (piece.role == Role::jamb) return "inner face";
  return edge_name(piece, low) + " face";
}

/// Whether the inner face of a jamb, which looks at the way through, is at the low end of its
/// thickness.
inline bool inner_face_is_low(const Piece& jamb) {
  return jamb.place.origin[static_cast<std::size_t>(jamb.place.axes[2])] != Length();
}

/// The name of an end of the piece as it stands in the leaf.
inline std::string end_name(const Piece& piece, bool low) {
  if (is_upright(piece)) return low ? "lower end" : "upper end";
  return low ? "left end" : "right end";
}

/// What places along a piece are told from: of what stands upright its foot, or where it has a
/// tenon there that end; else its left end.
inline std::string low_end(const Piece& piece, const Shoulders& shoulders) {
  if (!is_upright(piece)) return "left end";
  return shoulders.low ? "lower end" : "foot";
}

inline bool is_lap(const Joint& joint) {
  return joint.kind == JointKind::half_lap;
}

inline bool is_dowel(const Joint& joint) {
  return joint.kind == JointKind::dowel;
}

/// One set of figures that a machine is set to, and what is run with it.
template <typename Key, typename Rows>
struct MachineSet {
  Key key;
  Rows rows;
};

/// The rows of the set with this key, which is made if need be; sets stand in the order they were
/// first met.
template <typename Key, typename Rows>
Rows& rows_for(std::vector<MachineSet<Key, Rows>>& sets, const Key& key) {
  for (auto& set : sets)
    if (set.key == key) return set.rows;
  sets.push_back({key, {}});
  return sets.back().rows;
}

}  // namespace haunch
