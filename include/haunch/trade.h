// The kinds of things that are made: roles of pieces, joints, what is worked on a piece, the sizes
// of that, and what pieces are put together to. Each kind is a type with one table of its words.
#pragma once

#include <cstddef>
#include <iterator>
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
  // of a case
  side,
  bottom,
  top,
  top_rail,
  partition,
  shelf,
  back,
  toe_board,
  leg,
  cleat,
  filler,
  // of a face frame, besides stiles and rails
  mullion,
  // of a drawer, and of what it runs on
  drawer_front,
  drawer_box_front,
  drawer_side,
  drawer_back,
  drawer_bottom,
  drawer_rail,
  runner,
  kicker,
  guide,
  packing,
  dust_panel,
  slip,
  button,
  // of a pane's frame
  glazing_bar,
  // of a run of cabinets, and of whatever comes with an item
  end_panel,
  worktop,
  extra,
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
  stopped_housing,
  tongue,  // of an end, in a housing narrower than that
  dovetail,
  lapped_dovetail,
  finger,
  screws,
  planted,  // lies flat on what it is fixed to
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
  scribed_end,  // a flat one, over the worked edge that it stands on
  // for looks and for what stands beside the piece
  moulding,
  raise,
  arch,
  arched_head,
  arched_top,
  planed_taper,
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
  // of cases and drawers
  tongue,
  notch,
  tails,
  sockets,
  fingers,
  shelf_pin_holes,
  hinge_cup,
  screw_hole,
  slot,
  cutout,  // right through a worktop
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
  longer_at_back,
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
  // of rows of holes and of dovetails
  pitch,
  from_front,
  from_back,
  lap,
  tail,
  half_pin,
  quirk,  // of a bead
};

/// What pieces are put together to.
enum class GroupKind : unsigned char {
  leaf,
  pair,
  frame,
  set,
  cabinet,
  carcase,
  face_frame,
  drawer,
  front,  // a plain one, that does not open
  run,
  extras,  // what comes with the work but has no place in it
};

/// The words of a kind or a choice as specs and reports write them, one for each enumerator.
template <typename Kind>
inline constexpr std::nullptr_t kWords = nullptr;
template <>
inline constexpr std::string_view kWords<Role>[] = {"stile",
                                                    "rail",
                                                    "muntin",
                                                    "panel",
                                                    "glass",
                                                    "bead",
                                                    "jamb",
                                                    "head",
                                                    "transom",
                                                    "sill",
                                                    "threshold",
                                                    "stop",
                                                    "wedge",
                                                    "pin",
                                                    "dowel",
                                                    "loose-tenon",
                                                    "spline",
                                                    "side",
                                                    "bottom",
                                                    "top",
                                                    "top-rail",
                                                    "partition",
                                                    "shelf",
                                                    "back",
                                                    "toe-board",
                                                    "leg",
                                                    "cleat",
                                                    "filler",
                                                    "mullion",
                                                    "drawer-front",
                                                    "drawer-box-front",
                                                    "drawer-side",
                                                    "drawer-back",
                                                    "drawer-bottom",
                                                    "drawer-rail",
                                                    "runner",
                                                    "kicker",
                                                    "guide",
                                                    "packing",
                                                    "dust-panel",
                                                    "slip",
                                                    "button",
                                                    "glazing-bar",
                                                    "end-panel",
                                                    "worktop",
                                                    "extra"};
template <>
inline constexpr std::string_view kWords<JointKind>[] = {"mortise-and-tenon",
                                                         "stub-tenon",
                                                         "twin-tenon",
                                                         "loose-tenon",
                                                         "butt",
                                                         "through-tenon",
                                                         "wedge",
                                                         "bridle",
                                                         "pin",
                                                         "dowel",
                                                         "half-lap",
                                                         "mitre",
                                                         "mitre-spline",
                                                         "panel-in-groove",
                                                         "panel-in-rebate",
                                                         "glass-in-rebate",
                                                         "sealed-unit-in-rebate",
                                                         "bead-in-rebate",
                                                         "housing",
                                                         "rebated-corner",
                                                         "stopped-housing",
                                                         "tongue",
                                                         "dovetail",
                                                         "lapped-dovetail",
                                                         "finger",
                                                         "screws",
                                                         "planted"};
template <>
inline constexpr std::string_view kWords<FeatureKind>[] = {"groove",
                                                           "rebate",
                                                           "mortise",
                                                           "tenon",
                                                           "haunching",
                                                           "housing",
                                                           "lap",
                                                           "mitre",
                                                           "spline-slot",
                                                           "pin-hole",
                                                           "dowel-hole",
                                                           "glass-rebate",
                                                           "moulding-mitre",
                                                           "scribed-end",
                                                           "moulding",
                                                           "raise",
                                                           "arch",
                                                           "arched-head",
                                                           "arched-top",
                                                           "planed-taper",
                                                           "lip-rebate",
                                                           "meeting-rebate",
                                                           "bevel",
                                                           "rounding",
                                                           "taper",
                                                           "skew",
                                                           "gain",
                                                           "bore",
                                                           "lock-mortise",
                                                           "faceplate",
                                                           "strike-mortise",
                                                           "strike-plate",
                                                           "recess",
                                                           "tongue",
                                                           "notch",
                                                           "tails",
                                                           "sockets",
                                                           "fingers",
                                                           "shelf-pin-holes",
                                                           "hinge-cup",
                                                           "screw-hole",
                                                           "slot",
                                                           "cutout"};
template <>
inline constexpr std::string_view kWords<SizeName>[] = {"length",
                                                        "width",
                                                        "thickness",
                                                        "depth",
                                                        "diameter",
                                                        "radius",
                                                        "from_foot",
                                                        "from_edge",
                                                        "from_face",
                                                        "from_shoulder",
                                                        "from_corner",
                                                        "longer_in_front",
                                                        "longer_at_back",
                                                        "fillet",
                                                        "hollow_radius",
                                                        "tongue",
                                                        "shoulder",
                                                        "rise",
                                                        "span",
                                                        "side",
                                                        "at_crown",
                                                        "along_curve",
                                                        "centre_from_foot",
                                                        "tolerance",
                                                        "opening_rise",
                                                        "opening_span",
                                                        "opening_radius",
                                                        "pitch",
                                                        "from_front",
                                                        "from_back",
                                                        "lap",
                                                        "tail",
                                                        "half_pin",
                                                        "quirk"};
template <>
inline constexpr std::string_view kWords<GroupKind>[] = {"leaf",    "pair", "frame",      "set",
                                                         "cabinet", "case", "face-frame", "drawer",
                                                         "front",   "run",  "extras"};

/// The word of one of them, as in reports: "loose-tenon", "mortise-and-tenon", "from_foot".
template <typename Kind>
constexpr std::string_view word_of(Kind kind) {
  return kWords<Kind>[static_cast<std::size_t>(kind)];
}

// The last of each has a word, so that none can be forgotten.
static_assert(std::size(kWords<Role>) == static_cast<std::size_t>(Role::extra) + 1);
static_assert(std::size(kWords<JointKind>) == static_cast<std::size_t>(JointKind::planted) + 1);
static_assert(std::size(kWords<FeatureKind>) == static_cast<std::size_t>(FeatureKind::cutout) + 1);
static_assert(std::size(kWords<SizeName>) == static_cast<std::size_t>(SizeName::quirk) + 1);
static_assert(std::size(kWords<GroupKind>) == static_cast<std::size_t>(GroupKind::extras) + 1);

}  // namespace haunch
