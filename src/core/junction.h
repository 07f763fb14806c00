// Where one member meets another. A junction has axes of its own, so that a joint is cut the same
// way in a leaf, in a frame that lies in its wall, and in whatever else has members:
//
//   in       from the receiver's sight edge on into it; less than 0 is what has not entered
//   across   along the entering member's width, from its low edge
//   through  along what of the entering member is fitted between cheeks, from its low face
//
// Only `in` may run against the assembly's axis, where the heading does. Boxes and prisms of a
// junction have these three in the places of x, y and z.
#pragma once

#include <array>
#include <cstddef>
#include <optional>

#include "haunch/wood.h"

namespace haunch {

inline constexpr std::size_t kIn = 0, kAcross = 1, kThrough = 2;

struct Junction {
  std::size_t receives = 0, enters = 0;
  Heading heading;
  std::array<Axis, 3> axes;  // in, across and through in the assembly
  Triple origin;             // of the junction's axes in the assembly

  /// `through`: where nothing is said, the entering piece's thickness.
  Junction(const Assembly& assembly, std::size_t receiving, std::size_t entering, Heading way,
           std::optional<Axis> through = {});
  /// Where a joint stands.
  Junction(const Assembly& assembly, const Joint& joint)
      : Junction(assembly, joint.receives, joint.enters, joint.heading, joint.through) {}

  /// A joint here, of which nothing else is said.
  Joint joint(JointKind kind, const Measures& measures) const;

  Box in_assembly(const Box& here) const;
  Box from_assembly(const Box& box) const;
  Prism from_assembly(const Prism& prism) const;
  Box blank(const Piece& piece) const { return from_assembly(placed_blank(piece)); }
  /// In the axes of a piece that lies at `place`.
  Box own(const Box& here, const Place& place) const {
    return in_own_axes(in_assembly(here), place);
  }
  Prism own(const Prism& here, const Place& place) const;
  /// Which of a piece's own axes runs along one of these.
  std::size_t own_axis(std::size_t axis, const Place& place) const;

 private:
  bool runs_against(std::size_t axis) const { return axis == kIn && !heading.upwards; }
  /// A place along an assembly axis, along the same one here.
  Length here_at(std::size_t axis, Length there) const;
  /// A place along an axis, along the same one of a piece.
  Length own_at(std::size_t axis, Length at, const Place& place) const;
};

}  // namespace haunch
