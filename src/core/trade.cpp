#include "haunch/trade.h"

namespace haunch {

std::string_view word(Role role) {
  switch (role) {
    case Role::stile:
      return "stile";
    case Role::rail:
      return "rail";
    case Role::muntin:
      return "muntin";
    case Role::panel:
      return "panel";
    case Role::glass:
      return "glass";
    case Role::bead:
      return "bead";
    case Role::jamb:
      return "jamb";
    case Role::head:
      return "head";
    case Role::transom:
      return "transom";
    case Role::sill:
      return "sill";
    case Role::threshold:
      return "threshold";
    case Role::stop:
      return "stop";
    case Role::wedge:
      return "wedge";
    case Role::pin:
      return "pin";
    case Role::dowel:
      return "dowel";
    case Role::loose_tenon:
      return "loose-tenon";
    case Role::spline:
      return "spline";
  }
  return {};
}

std::string_view word(JointKind kind) {
  switch (kind) {
    case JointKind::mortise_and_tenon:
      return "mortise-and-tenon";
    case JointKind::stub_tenon:
      return "stub-tenon";
    case JointKind::twin_tenon:
      return "twin-tenon";
    case JointKind::loose_tenon:
      return "loose-tenon";
    case JointKind::butt:
      return "butt";
    case JointKind::through_tenon:
      return "through-tenon";
    case JointKind::wedge:
      return "wedge";
    case JointKind::bridle:
      return "bridle";
    case JointKind::pin:
      return "pin";
    case JointKind::dowel:
      return "dowel";
    case JointKind::half_lap:
      return "half-lap";
    case JointKind::mitre:
      return "mitre";
    case JointKind::mitre_spline:
      return "mitre-spline";
    case JointKind::panel_in_groove:
      return "panel-in-groove";
    case JointKind::panel_in_rebate:
      return "panel-in-rebate";
    case JointKind::glass_in_rebate:
      return "glass-in-rebate";
    case JointKind::sealed_unit_in_rebate:
      return "sealed-unit-in-rebate";
    case JointKind::bead_in_rebate:
      return "bead-in-rebate";
    case JointKind::housing:
      return "housing";
    case JointKind::rebated_corner:
      return "rebated-corner";
  }
  return {};
}

// A table of words, as a switch so that the compiler finds a kind without one.
// NOLINTNEXTLINE(readability-function-size)
std::string_view word(FeatureKind kind) {
  switch (kind) {
    case FeatureKind::groove:
      return "groove";
    case FeatureKind::rebate:
      return "rebate";
    case FeatureKind::mortise:
      return "mortise";
    case FeatureKind::tenon:
      return "tenon";
    case FeatureKind::haunching:
      return "haunching";
    case FeatureKind::housing:
      return "housing";
    case FeatureKind::lap:
      return "lap";
    case FeatureKind::mitre:
      return "mitre";
    case FeatureKind::spline_slot:
      return "spline-slot";
    case FeatureKind::pin_hole:
      return "pin-hole";
    case FeatureKind::dowel_hole:
      return "dowel-hole";
    case FeatureKind::glass_rebate:
      return "glass-rebate";
    case FeatureKind::moulding_mitre:
      return "moulding-mitre";
    case FeatureKind::moulding:
      return "moulding";
    case FeatureKind::raise:
      return "raise";
    case FeatureKind::arch:
      return "arch";
    case FeatureKind::arched_head:
      return "arched-head";
    case FeatureKind::arched_top:
      return "arched-top";
    case FeatureKind::lip_rebate:
      return "lip-rebate";
    case FeatureKind::meeting_rebate:
      return "meeting-rebate";
    case FeatureKind::bevel:
      return "bevel";
    case FeatureKind::rounding:
      return "rounding";
    case FeatureKind::taper:
      return "taper";
    case FeatureKind::skew:
      return "skew";
    case FeatureKind::gain:
      return "gain";
    case FeatureKind::bore:
      return "bore";
    case FeatureKind::lock_mortise:
      return "lock-mortise";
    case FeatureKind::faceplate:
      return "faceplate";
    case FeatureKind::strike_mortise:
      return "strike-mortise";
    case FeatureKind::strike_plate:
      return "strike-plate";
    case FeatureKind::recess:
      return "recess";
  }
  return {};
}

// A table of words, as a switch so that the compiler finds a kind without one.
// NOLINTNEXTLINE(readability-function-size)
std::string_view word(SizeName name) {
  switch (name) {
    case SizeName::length:
      return "length";
    case SizeName::width:
      return "width";
    case SizeName::thickness:
      return "thickness";
    case SizeName::depth:
      return "depth";
    case SizeName::diameter:
      return "diameter";
    case SizeName::radius:
      return "radius";
    case SizeName::from_foot:
      return "from_foot";
    case SizeName::from_edge:
      return "from_edge";
    case SizeName::from_face:
      return "from_face";
    case SizeName::from_shoulder:
      return "from_shoulder";
    case SizeName::from_corner:
      return "from_corner";
    case SizeName::longer_in_front:
      return "longer_in_front";
    case SizeName::fillet:
      return "fillet";
    case SizeName::hollow_radius:
      return "hollow_radius";
    case SizeName::tongue:
      return "tongue";
    case SizeName::shoulder:
      return "shoulder";
    case SizeName::rise:
      return "rise";
    case SizeName::span:
      return "span";
    case SizeName::side:
      return "side";
    case SizeName::at_crown:
      return "at_crown";
    case SizeName::along_curve:
      return "along_curve";
    case SizeName::centre_from_foot:
      return "centre_from_foot";
    case SizeName::tolerance:
      return "tolerance";
    case SizeName::opening_rise:
      return "opening_rise";
    case SizeName::opening_span:
      return "opening_span";
    case SizeName::opening_radius:
      return "opening_radius";
  }
  return {};
}

std::string_view word(GroupKind kind) {
  switch (kind) {
    case GroupKind::leaf:
      return "leaf";
    case GroupKind::pair:
      return "pair";
    case GroupKind::frame:
      return "frame";
    case GroupKind::set:
      return "set";
  }
  return {};
}

}  // namespace haunch
