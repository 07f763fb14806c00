// A door frame with every size settled: what the spec states, and the trade's or the shop's
// defaults for the rest.
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "haunch/wood.h"
#include "pin.h"
#include "planned.h"
#include "spec.h"
#include "tenon.h"

namespace haunch {

struct StopPlan {
  StopKind kind = StopKind::planted;
  Length depth;   // into the opening, or of the rebate
  Length width;   // of a planted one
  Length gap;     // between the leaf's back and it
  Length reveal;  // the leaf's face behind the frame's

  /// How far the rebates reach beyond the sight size; planted stops stand in front of the jambs.
  Length rebate() const { return kind == StopKind::rebate ? depth : Length(); }
  Length planted() const { return kind == StopKind::planted ? depth : Length(); }
};

/// A jamb's, sill's or transom's tenon and its mortise.
struct FrameTenon {
  Length depth, relish, thickness, from_face;
  MortiseDesign mortise;
  PinDesign jamb_pins = {}, transom_pins = {};  // as they stand across the right jamb's
};

struct TransomPlan {
  Length thickness;
  Length light;  // clear height above it
};

/// A frame of two jambs and a head, and what stands between them. Places are from its left lower
/// corner, at its face.
struct CasePlan {
  Length wall_width, wall_height;
  std::optional<AsFound> found;    // of a wall's opening that was measured all round
  Length width, height;            // over all its wood but the horns of a tenoned head
  Length leaf_width, leaf_height;  // with its lips
  Length leaf_thickness;           // of a rebated leaf what stands behind its lip
  int leaves = 1;
  Sides fitting, clearance, lip;

  Length jamb_width, jamb_thickness, head_thickness;
  StopPlan stop;
  HeadJoint head_joint = HeadJoint::housed;
  Length housing_depth, fit_allowance;
  Length horn;
  FrameTenon tenon;
  std::optional<Length> threshold, sill;  // their heights
  std::optional<TransomPlan> transom;

  /// Above which the leaf hangs: the top of sill or threshold, else the floor.
  Length base() const { return sill.value_or(threshold.value_or(Length())); }
  /// What stands above the head: the horns of jambs that it is housed in.
  Length above_head() const { return head_joint == HeadJoint::housed ? horn : Length(); }
  /// The lower edge of the head, behind its rebate.
  Length head_low() const { return height - above_head() - head_thickness; }
  /// The lower edge of what stands above the leaf: the head, or a transom.
  Length lintel_low() const;
  Length sight_width() const { return width - jamb_thickness * 2; }
  /// Where the leaf's left lower corner lies.
  Triple leaf_place() const;
  /// How far behind the face the stops stand.
  Length stop_from_face() const { return stop.reveal + leaf_thickness + stop.gap; }
  /// What the rebate takes off the width of tenons: nothing of those that stand wholly behind it.
  Length tenon_loss() const {
    return tenon.mortise.from_face < stop_from_face() ? stop.rebate() : Length();
  }
  /// Where the tenons of the right jamb stand across its thickness, within what the rebate takes of
  /// it and short of its outside; those of a transom across its own.
  Strip jamb_strip() const { return {tenon_loss(), jamb_thickness - tenon.relish}; }
  Strip transom_strip() const { return {tenon_loss(), transom->thickness}; }
  /// The room that the leaf hangs in, with the clearances round it.
  Length leaf_room_width() const { return leaf_width - lip.across() + clearance.across(); }
  Length leaf_room_height() const { return leaf_height - lip.head + clearance.upright(); }
};

using PlannedCase = Planned<CasePlan>;

/// What hangs in a frame that is part of a set.
struct HungLeaves {
  Length thickness;
  int count = 1;
};

/// What stands before a frame's keys in the table, but not in a spec of a frame alone.
inline constexpr std::string_view kFrameRoot = "frame.";

/// Settles every size. `root`: kFrameRoot for a frame alone, nothing for one in a set. `hung`: of a
/// frame without leaves of its own it is empty.
PlannedCase plan_frame(const Spec& spec, std::string_view root, std::optional<HungLeaves> hung);

/// How high the opening, the frame or the leaf is that a spec states.
Length stated_height(const Spec& spec);

}  // namespace haunch
