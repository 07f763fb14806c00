// Convex blocks of wood with flat faces in any direction: what boxes become where something sloping
// is cut.
//
// In doubles, counted in steps. A place along an axis, of an upright face or a box, stays the whole
// number that it was; one along a slope is off by less than kTouch for pieces up to 10 m.
#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <span>
#include <vector>

#include "haunch/wood.h"

namespace haunch {

/// Faces nearer than this touch: 1/64 step, 0.00000001 mm.
inline constexpr double kTouch = 1.0 / 64;

/// A point or a direction along the three axes.
using Spot = std::array<double, 3>;

/// The half of space on one side of a plane: all points p with normal * p <= offset.
struct HalfSpace {
  Spot normal;  // of length 1
  double offset = 0;
};

/// One face of a block: what it bounds, and where its corners stand among the block's.
struct Facet {
  HalfSpace side;
  std::size_t first = 0, count = 0;
};

inline constexpr std::size_t kNoAxis = 3;

/// A convex block. Most are runs: an outline on two axes, straight along the third. Of a run the
/// first two faces are its low and its high end, and the others stand over its outline's edges in
/// turn, so that it is cut and measured in the outline's plane.
struct Polyhedron {
  std::vector<Facet> facets;
  std::vector<Spot> corners;    // of each face in turn, one face after the other
  Spot low, high;               // of its corners along each axis
  std::size_t along = kNoAxis;  // the axis that a run runs along

  std::span<const Spot> corners_of(const Facet& facet) const {
    return {corners.data() + facet.first, facet.count};
  }
};

/// A way along one axis.
struct Way {
  std::size_t axis = 0;
  bool upwards = true;
};

/// A box as a run along an axis.
Polyhedron polyhedron_of(const Box& box, std::size_t along = 2);

/// An outline on two axes, convex, run along the third; what its corners have along that is not
/// looked at.
Polyhedron upright(std::span<const Spot> outline, std::size_t along, double from, double to);

/// A prism of the assembly's axes as polyhedra that touch but do not overlap.
std::vector<Polyhedron> polyhedra_of(const Prism& prism);

/// The box around a prism.
Box bounds_of(const Prism& prism);

/// Whether the boxes around two blocks are apart or merely touch.
bool apart(const Polyhedron& a, const Polyhedron& b);

/// What two polyhedra have in common, if more than a face.
std::optional<Polyhedron> common(const Polyhedron& a, const Polyhedron& b);

/// The part of a block inside a region, if more than a face.
std::optional<Polyhedron> clipped(const Polyhedron& block, const Box& region);

/// Whether one of the two lies all beyond a face of the other. Most that touch do.
bool touch_at_most(const Polyhedron& a, const Polyhedron& b);

/// Adds to `rest` what is left of `block` without `cut`, as polyhedra that do not overlap.
void add_rest(std::vector<Polyhedron>& rest, Polyhedron block, const Polyhedron& cut);

/// From a low to a high corner, each to the nearest step.
Box box_of(const Spot& low, const Spot& high);

/// The box around a block, to the nearest step.
Box bounds_of(const Polyhedron& block);

/// The least distance from `from` to `to`, both ways as in gap() of boxes; exact between level
/// faces, else to the nearest step.
std::optional<Length> gap(const Polyhedron& from, const Polyhedron& to, Way way);

/// In steps: no distance from `from` to `to` this way is less, as far as their planes tell over the
/// shadow that they may have in common. The planes of a convex block never lie outside of it. Of
/// runs along one axis nothing is said: their gap is as soon measured.
double least_possible_gap(const Polyhedron& from, const Polyhedron& to, Way way);

/// The least width of a block, of those square to its faces.
Length least_width(const Polyhedron& block);

/// In cubic millimetres.
double volume_of(const Polyhedron& block);

/// The block seen along an axis, as polyhedra between two places along it.
std::vector<Polyhedron> shadows_of(const Polyhedron& block, std::size_t axis, double from,
                                   double to);

}  // namespace haunch
