// The wood of a piece where it stands in the assembly: blank less cuts.
//
// All of it is boxes, exact to the step, but where something sloping was cut. There it is convex
// polyhedra, and only there.
#pragma once

#include <optional>
#include <vector>

#include "haunch/wood.h"
#include "polyhedron.h"

namespace haunch {

/// Boxes and polyhedra, disjoint but for their faces.
struct Wood {
  std::vector<Box> boxes;
  std::vector<Polyhedron> sloping;  // what boxes cannot say

  bool empty() const { return boxes.empty() && sloping.empty(); }
};

/// A piece in the assembly's axes.
struct Solid {
  Box blank;
  Wood wood;
};

/// With the recesses of fittings, or as it is glued up before they are let in: joints are measured
/// so, and what a fitting does to them is a matter of its own.
enum class Fittings { not_yet, let_in };
Solid solid_of(const Piece& piece, Fittings fittings = Fittings::not_yet);
std::vector<Solid> solids_of(const Assembly& assembly);

/// Takes `cut` out of each of `boxes`, which stay disjoint.
void take_out(std::vector<Box>& boxes, const Box& cut);

/// The same of wood. Boxes that a polyhedron does not meet stay as they are.
void take_out(Wood& wood, const Box& cut);
void take_out(Wood& wood, const Polyhedron& cut);
void take_out(Wood& wood, const Prism& cut);

/// What `a` and `b` have in common, if more than a face.
std::optional<Box> common(const Box& a, const Box& b);

/// The parts of `boxes` inside `region`.
std::vector<Box> clipped(const std::vector<Box>& boxes, const Box& region);

/// The parts of `wood` inside `region`.
Wood clipped(const Wood& wood, const Box& region);

/// The box around each part, polyhedra' to the nearest step.
std::vector<Box> bounds_of(const Wood& wood);

/// What a feature of a piece at `place` takes away. Its parts may overlap.
Wood taken_away(const Feature& feature, const Place& place);

/// Puts more wood to it, that is apart from it.
void add(Wood& all, Wood more);

/// The least box that holds all of `wood`, which is some.
Box room_of(const Wood& wood);

/// Whether the two overlap as seen along `axis`, by more than an edge.
bool in_shadow(const Box& a, const Box& b, std::size_t axis);

/// How far two boxes are apart, along the axis on which that is most; negative where they overlap.
Length apart_by(const Box& a, const Box& b);

/// The distance from one box to another that goes on beyond it this way and stands in its shadow;
/// negative where the two overlap. Empty when the other does not.
std::optional<Length> gap(const Box& from, const Box& to, Way way);

/// The least distance from a box of `from` to one of `to` that goes on beyond it this way and
/// stands in its shadow; negative where the two overlap. Empty when there is none.
std::optional<Length> gap(const std::vector<Box>& from, const std::vector<Box>& to, Way way);

/// The same of wood that may slope: of each two the least distance from one surface to the other,
/// to the nearest step where one slopes.
std::optional<Length> gap(const Wood& from, const Wood& to, Way way);

/// How far the two stand inside each other: the least width of what two of their boxes or polyhedra
/// have in common, of the largest such part; zero for none.
Length depth_of_common(const Wood& a, const Wood& b);
Length depth_of_common(const Solid& a, const Solid& b);

/// The wood left of a piece, in cubic millimetres.
double volume_of(const Solid& solid);

}  // namespace haunch
