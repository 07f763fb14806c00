// The kinds of things that are made: roles of pieces, joints, what is worked on a piece, the sizes
// of that, and what pieces are put together to. Each kind is a type with one table of its words, in
// trade.cpp, so that the compiler tells what a new one needs.
#pragma once

#include <string_view>

namespace haunch {

/// What a piece is in the thing that it is a part of.
enum class Role : unsigned char {
  // of a leaf
  stile,
  rail,
  muntin,
  panel,
  glass,
  bead,
  // of what a leaf hangs in
  jamb,
  head,
  transom,
  sill,
  threshold,
  stop,
  // of a joint that has pieces of its own
  wedge,
  pin,
  dowel,
  loose_tenon,
  spline,
};

/// How one piece meets another.
enum class JointKind : unsigned char {
  mortise_and_tenon,
  stub_tenon,
  twin_tenon,
  loose_tenon,
  butt,
  through_tenon,
  wedge,
  bridle,
  pin,
  dowel,
  half_lap,
  mitre,
  mitre_spline,
  panel_in_groove,
  panel_in_rebate,
  glass_in_rebate,
  sealed_unit_in_rebate,
  bead_in_rebate,
  housing,
  rebated_corner,
};

/// What is worked on a piece.
enum class FeatureKind : unsigned char {
  // for a joint
  groove,
  rebate,
  mortise,
  tenon,
  haunching,
  housing,
  lap,
  mitre,
  spline_slot,
  pin_hole,
  dowel_hole,
  glass_rebate,
  moulding_mitre,
  // for looks and for what stands beside the piece
  moulding,
  raise,
  arch,
  arched_head,
  arched_top,
  lip_rebate,
  meeting_rebate,
  bevel,
  // of pieces that are no boards
  rounding,
  taper,
  skew,
  // for fittings
  gain,
  bore,
  lock_mortise,
  faceplate,
  strike_mortise,
  strike_plate,
  recess,
};

/// A size of a feature that a joiner reads off.
enum class SizeName : unsigned char {
  length,
  width,
  thickness,
  depth,
  diameter,
  radius,
  from_foot,
  from_edge,
  from_face,
  from_shoulder,
  from_corner,
  longer_in_front,
  // of mouldings and raised panels
  fillet,
  hollow_radius,
  tongue,
  shoulder,
  // of arches
  rise,
  span,
  side,
  at_crown,
  along_curve,
  centre_from_foot,
  tolerance,
  opening_rise,
  opening_span,
  opening_radius,
};

/// What pieces are put together to.
enum class GroupKind : unsigned char { leaf, pair, frame, set };

/// As in reports: "loose-tenon", "mortise-and-tenon", "lip-rebate", "from_foot".
std::string_view word(Role role);
std::string_view word(JointKind kind);
std::string_view word(FeatureKind kind);
std::string_view word(SizeName name);
std::string_view word(GroupKind kind);

}  // namespace haunch
