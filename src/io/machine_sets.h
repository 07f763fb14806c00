// What the pages of joinery have in common: the names of edges and ends, and figures that a machine
// is set to with all that is run on them.
#pragma once

#include <algorithm>
#include <optional>
#include <string>
#include <vector>

#include "lines.h"
#include "making.h"
#include "polyhedron.h"
#include "text_table.h"

namespace haunch {

using Marks = std::vector<std::string>;

inline void add_once(Marks& marks, const std::string& mark) {
  if (std::find(marks.begin(), marks.end(), mark) == marks.end()) marks.push_back(mark);
}

/// The name of an edge across the piece's width as it stands in the leaf.
inline std::string edge_name(const Piece& piece, bool low) {
  if (is_upright(piece)) return low ? "left" : "right";
  return low ? "lower" : "upper";
}

/// The name of an end of the piece as it stands in the leaf.
inline std::string end_name(const Piece& piece, bool low) {
  if (is_upright(piece)) return low ? "lower end" : "upper end";
  if (runs_back(piece)) return low != piece.place.backwards[0] ? "front end" : "rear end";
  return low ? "left end" : "right end";
}

/// Whether what is worked on a face of it is worked on the one that looks inwards.
inline bool has_inner_face(Role role) {
  constexpr Role kHave[] = {Role::jamb,        Role::drawer_front, Role::drawer_box_front,
                            Role::drawer_side, Role::drawer_back,  Role::slip};
  return std::find(std::begin(kHave), std::end(kHave), role) != std::end(kHave);
}

/// Where a run comes in. Of a stile, which is worked on one edge only, that is its face edge, and
/// of a jamb or what a drawer is made of its inner face, so that both of a pair read alike: "face",
/// "lower", "left end", "inner face".
inline std::string place_of(const Piece& piece, const Run& run) {
  const bool low = !run.side.from_high;
  if (run.side.into == 0) return end_name(piece, low);
  if (run.side.into == 1) return piece.role == Role::stile ? "face" : edge_name(piece, low);
  return has_inner_face(piece.role) ? "inner face" : edge_name(piece, low) + " face";
}

/// The mark of the piece that a run is on, and of what comes in there, as cells of a table.
inline Cell mark_of(const Assembly& wood, const Run& run) {
  return Cell::of_mark(wood.pieces[run.piece].mark);
}
inline Cell taken_by(const Assembly& wood, const Run& run) {
  return Cell::of_mark(wood.pieces[wood.joints[*run.joint].enters].mark);
}

/// Calls `use` with each operation that makes these, and each of its runs.
template <typename Use>
void each_run(const Making& making, FeatureKind makes, Use use) {
  for (const Operation& operation : making.operations)
    if (operation.makes == makes)
      for (const Run& run : operation.runs)
        use(operation, run);
}

/// From the shoulder to the near side of what is worked, where it is told from there too.
inline std::optional<Length> near_from_shoulder(const Run& run) {
  return run.from_shoulder ? std::optional(run.from_shoulder->near) : std::nullopt;
}

/// From near to far as both are printed, so that a row adds up.
inline Length extent_printed(const Run& run, const LengthPrinter& lengths) {
  return lengths.as_printed(*run.far) - lengths.as_printed(run.near);
}

/// The pieces of a role, in their order, and their marks.
inline std::vector<const Piece*> all_of(const Assembly& wood, Role role) {
  std::vector<const Piece*> pieces;
  for (const Piece& piece : wood.pieces)
    if (piece.role == role) pieces.push_back(&piece);
  return pieces;
}
inline Marks marks_of(const std::vector<const Piece*>& pieces) {
  Marks marks;
  for (const Piece* piece : pieces)
    marks.push_back(piece->mark);
  return marks;
}

/// Whether a piece is of a case itself, not of its frame, fronts or drawers.
inline bool is_of_case(const Assembly& wood, const Piece& piece) {
  const Group* group = &wood.groups[piece.group];
  while (group->kind != GroupKind::carcase && group->in)
    group = &wood.groups[*group->in];
  return group->kind == GroupKind::carcase || wood.groups[piece.group].kind == GroupKind::cabinet;
}

/// Whether a piece has a rebate along it, for the leaf.
inline bool has_long_rebate(const Piece& piece) {
  return std::any_of(piece.features.begin(), piece.features.end(), [](const Feature& feature) {
    return feature.kind == FeatureKind::rebate && feature.joints.empty();
  });
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

/// The middle of a round hole, along one of its piece's axes.
inline Length middle(const Prism& hole, std::size_t axis) {
  const Box box = bounds_of(hole);
  return box.low[axis] + floor_half(box.extent(axis));
}

/// The edge or face through which a tenon comes in to the cheeks that its pin's hole is in.
inline std::string entered_edge(const Piece& piece, const Prism& hole) {
  const std::size_t in = 3 - hole.along;
  const bool low = middle(hole, in) * 2 < piece.blank[in];
  if (piece.role == Role::stile) return "face";
  if (in == 1) return edge_name(piece, low);
  return piece.role == Role::jamb ? "inner face" : edge_name(piece, low) + " face";
}

/// Across the piece, from the edge that lies in front or below.
inline Length middle_across(const Piece& piece, const Prism& hole) {
  const Length middle_of = middle(hole, 1);
  return piece.place.backwards[1] ? piece.blank[1] - middle_of : middle_of;
}

}  // namespace haunch
