// What a door is made like where neither the spec nor the shop says: by its size and its unit.
#pragma once

#include <vector>

#include "choices.h"
#include "haunch/length_text.h"
#include "spec.h"

namespace haunch {

/// What a leaf is for, where nothing is said: house doors hang in openings over 60 in (1524 mm)
/// high; the rest are cabinet doors.
Use usual_use(Length opening_height);
std::string_view why_usual(Use use);

/// What the spec says of that, else what is usual for the height of its opening.
Use use_of(const Spec& spec);

/// The trade's defaults for one leaf.
struct DoorDefaults {
  bool house;
  Length whole;  // ratios go to the nearest of these: 1 mm or 1/16 in
  Length clearance;
  Length foot_clearance;
  Length arch_tolerance;
  Length lap;              // of a rebated leaf
  Length overlay_meeting;  // gap between two overlay leaves
  Length meeting_rest;     // between rebated meeting stiles, in the thickness
  Length thickness;
  Length stile;
  std::vector<Length> rails;    // empty: two rails, as wide as the stile
  Length highest_without_rail;  // a leaf that has two
  Length muntin;
  Length groove_depth;
  Length fit_allowance;
  Length least_relish;
  Length edge_clearance, bottom_clearance;
  Length least_width_limit;
  Length wedge_thickness;      // at the thick end
  Length loose_wall;           // between the mortise in a rail's end and its groove
  Length left_behind_mortise;  // by a muntin's tenon
  Length haunch_short_of_groove, haunch_past_rebate;
  Length moulding, fillet;  // a moulding's width; of a quarter round what is straight
  Length gap_across, gap_along, board_gap, least_bite;
  Length panel_allowance;
  Length glass_clearance, unit_clearance, unit_rebate, bedding;
  Length raise_run, raise_shoulder;
  Length horn;
  Length cabinet_hinge;    // its length; of house doors it goes by the leaf
  Length hinge_thickness;  // of one of its leaves
  Length behind_hinge;     // of the stile's edge, left whole
  Length house_hinge_from_top, house_hinge_from_foot;
  Length lock_height;
  Length lock_rail_top;         // above the leaf's foot
  std::vector<Length> cutters;  // rising
  std::vector<Length> dowels;   // diameters that are sold, rising
  Length dowel_clearance, dowel_spacing;
  Length pin;  // diameter of those through tenons
  Length draw_in_hardwood, draw_in_softwood, draw_in_cabinets;
  Length tenon_over;
  Length spline_room;
  Length size_step;  // of gaps that are chosen for the seasons
};

DoorDefaults door_defaults(Unit unit, Use use);

/// The thickness of a rebated leaf's lip.
Length usual_lip(Length leaf_thickness, const DoorDefaults& defaults);

}  // namespace haunch
