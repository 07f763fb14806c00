// The trade's limits, in the figures of the shop's own unit.
#pragma once

#include "haunch/length_text.h"

namespace haunch {

/// Sources are named with each rule in the files that use it.
struct Limits {
  Length least_wood;         // less will not last: fail
  Length least_lip;          // between a moulding and a groove; less is a feather edge: fail
  Length thin_lip;           // less is thin: caution
  Length thin_wood;          // less is a thin wall: caution
  Length thin_beside_hole;   // less from a dowel hole in a sheet to its face or end: caution
  Length thin_at_hole;       // less from a hole through a piece to its groove: caution
  Length least_bite;         // of a panel's edge in its groove, of glass in its rebate: fail
  Length least_bead;         // thick, behind glass: caution
  Length least_unit_rebate;  // deep, for a sealed unit: caution
  Length loosest_fit;        // both cheeks together: caution
  Length loosest_edges;      // of a tenon in its mortise, both together: caution
  Length loosest_panel;      // groove less tongue: caution
  Length widest_glued;       // across the grain: caution
  Length least_to_end;       // of relish, from a tenon to the end of the piece it enters: caution
  Length least_at_side;      // between leaf and opening, of wood that has swollen: caution
  Length shut_shoulder;      // a shoulder that opens or presses more, as wood moves: caution
  Length least_lap;          // of rebated meeting stiles over each other: caution
  Length least_over;         // of a leaf or its lip over what is beside its opening: caution
  Length least_swing;        // between a leaf's far corner and what it passes: caution
  Length least_beyond_housing;  // to the end of the housed piece: caution
  Length most_found_gap;        // of a leaf's gap, more than designed: caution
  Length most_packing;          // of a frame's gap to the wall, more than designed: caution
  Length thickest_stubbed;      // of a frame that a stub in the groove holds
  Length least_stub;            // deep, in a small leaf, or with board glued in: caution
  Length least_stub_alone;      // in a larger one: caution
  Length least_below_stub;      // to the groove's bottom: caution
  Length highest_lock_rail;     // its top above the leaf's foot: caution
  Length least_half_pin;        // where it is narrowest: caution
  Length least_pin;             // the same of a pin between two tails: caution
  Length widest_tail;           // at its end: caution
  Length thinnest_lap;          // before lapped tails; less breaks through: fail
  Length thin_lap;              // less is thin: caution
};

constexpr Limits limits_in(Unit unit) {
  const bool mm = unit == Unit::mm;
  Limits limits;
  limits.least_wood = Length::from_mm(3);
  limits.least_lip = Length::from_mm_thousandths(500);
  limits.thin_lip = Length::from_mm_thousandths(1500);  // 1/16 in is more
  limits.thin_wood = Length::from_mm(5);                // the larger of 5 mm and 3/16 in
  limits.thin_beside_hole = mm ? Length::from_mm(4) : Length::from_inch_parts(5, 32);
  limits.thin_at_hole = mm ? Length::from_mm_thousandths(9'500) : Length::from_inch_parts(3, 8);
  limits.least_bite = mm ? Length::from_mm(3) : Length::from_inch_parts(1, 8);
  limits.least_bead = mm ? Length::from_mm(6) : Length::from_inch_parts(1, 4);
  limits.least_unit_rebate = Length::from_mm(15);
  limits.loosest_fit = mm ? Length::from_mm_thousandths(250) : Length::from_inch_parts(1, 100);
  limits.loosest_edges = mm ? Length::from_mm_thousandths(3'200) : Length::from_inch_parts(1, 8);
  limits.loosest_panel = mm ? Length::from_mm_thousandths(800) : Length::from_inch_parts(1, 32);
  limits.widest_glued = mm ? Length::from_mm(100) : Length::from_inch_parts(4);
  limits.least_to_end = mm ? Length::from_mm(12) : Length::from_inch_parts(1, 2);
  limits.least_at_side = mm ? Length::from_mm_thousandths(500) : Length::from_inch_parts(1, 64);
  limits.shut_shoulder = mm ? Length::from_mm_thousandths(800) : Length::from_inch_parts(1, 32);
  limits.least_lap = mm ? Length::from_mm(6) : Length::from_inch_parts(1, 4);
  limits.least_over = mm ? Length::from_mm(3) : Length::from_inch_parts(1, 8);
  limits.least_swing = mm ? Length::from_mm_thousandths(500) : Length::from_inch_parts(1, 64);
  limits.least_beyond_housing = mm ? Length::from_mm(10) : Length::from_inch_parts(3, 8);
  limits.most_found_gap = mm ? Length::from_mm(3) : Length::from_inch_parts(1, 8);
  limits.most_packing = mm ? Length::from_mm(10) : Length::from_inch_parts(3, 8);
  limits.thickest_stubbed = mm ? Length::from_mm(25) : Length::from_inch_parts(1);
  limits.least_stub = mm ? Length::from_mm(8) : Length::from_inch_parts(11, 32);
  limits.least_stub_alone = mm ? Length::from_mm(18) : Length::from_inch_parts(23, 32);
  limits.least_below_stub = mm ? Length::from_mm_thousandths(400) : Length::from_inch_parts(1, 64);
  limits.highest_lock_rail = Length::from_inch_parts(38);
  limits.least_half_pin = mm ? Length::from_mm(6) : Length::from_inch_parts(1, 4);
  limits.least_pin = mm ? Length::from_mm(3) : Length::from_inch_parts(1, 8);
  limits.widest_tail = mm ? Length::from_mm(45) : Length::from_inch_parts(7, 4);
  limits.thinnest_lap = mm ? Length::from_mm_thousandths(1'500) : Length::from_inch_parts(1, 16);
  limits.thin_lap = mm ? Length::from_mm_thousandths(2'400) : Length::from_inch_parts(3, 32);
  return limits;
}

}  // namespace haunch
