// A door with every size settled: what the spec states, and the trade's or the shop's defaults for
// the rest.
#pragma once

#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <vector>

#include "arch.h"
#include "door_joints.h"
#include "dowel.h"
#include "edge.h"
#include "glazing.h"
#include "groove.h"
#include "mitre.h"
#include "pin.h"
#include "planned.h"
#include "raise.h"
#include "spec.h"
#include "tenon.h"

namespace haunch {

struct RailPlan {
  Length width;
  Length low;  // its lower edge above the leaf's foot
  std::string name;
  bool is_lock_rail = false;
};

/// The space between two rails, and the sight widths of the panels across it.
struct TierPlan {
  Strip height;
  std::vector<Strip> sights;  // from the left

  bool has_muntins() const { return sights.size() > 1; }
};

/// How the leaves of a pair meet, and which of them this is.
struct PairPlan {
  Length width;                 // of both leaves together, with the gap between them
  Length clearance, lap, rest;  // lap: gap included; rest: in the thickness
  Length meeting_stile;         // as wide as it is seen from the face
  bool right_first = true;
  bool is_right = false;

  /// Whether this leaf laps before the other.
  bool laps_in_front() const { return right_first == is_right; }
  /// The thickness of the lap in front, of a leaf so thick.
  Length front(Length thickness) const { return floor_half(thickness - rest); }
};

/// The frame: what is seen from the face side.
struct FramePlan {
  Length width, height, thickness;  // of this leaf
  Fit opening;
  Sides lip;             // what stands of this leaf over its own body, which is in the opening
  Length lip_thickness;  // of a rebated leaf
  std::optional<PairPlan> pair;
  std::optional<Arch> arch;        // of the top rail's underside
  std::optional<ArchedHead> head;  // of the leaf's top
  Length horn;
  Length stile_left, stile_right;
  Length off_left, off_right;   // what rebates take of a stile, of one leaf of a pair or the other
  std::vector<RailPlan> rails;  // from the top
  std::vector<TierPlan> tiers;  // from the top
  Length muntin_width;

  Length narrow_stile() const;                                       // less its rebates
  Length widest_rebate() const;                                      // of its outer edges
  Length edge_height() const { return head ? head->edge : height; }  // at the outer edges
  Length wide_stile() const;                                         // as seen from the face
  /// The edges of a rail that look at panels.
  MitredEdges moulded_edges(std::size_t rail) const { return {rail + 1 < rails.size(), rail > 0}; }
  bool is_end_rail(std::size_t rail) const { return rail == 0 || rail + 1 == rails.size(); }
  JointPlace place_of(std::size_t rail) const {
    return is_end_rail(rail) ? JointPlace::corner : JointPlace::middle;
  }
  bool has_muntins() const;
  /// What the arch adds to a rail's width at its ends.
  Length arched(std::size_t rail) const {
    return rail == 0 && arch ? arch->rise + arch->below : Length();
  }
  /// How far what is worked so deep along the top rail's lower edge stands above that edge, `in`
  /// from a shoulder, or from either. Along an arch that is more than its depth.
  Length worked_over_end(Length depth, Length in, bool right) const;
  Length worked_over_ends(Length depth, Length in) const {
    return std::max(worked_over_end(depth, in, false), worked_over_end(depth, in, true));
  }
  /// What a lip's rebate takes of a rail's outer edge.
  Length rebate_of_rail(std::size_t rail) const;
  /// Whether a rail receives muntins from above or below.
  bool takes_muntins(std::size_t rail) const;
  /// How wide a rail is where muntins enter it, less what an arched top takes there.
  Length width_over_muntins(std::size_t rail) const;
};

/// Twin tenons: two mortises side by side in the thickness.
struct TwinPlan {
  Length width;  // of each
  Length between;
  Length from_face;  // to the first one's near wall

  Length second_from_face() const { return from_face + width + between; }
};

/// Depths, widths and places that all tenons of a kind have in common.
struct JoinPlan {
  Length rail_depth, muntin_depth;
  bool rail_stub = false, muntin_stub = false;
  bool has_mortises = false;
  bool single_mortises = false;                        // some that are not of twins
  std::array<JointWord, kJointPlaces.size()> words{};  // by JointPlace
  TwinPlan twin;
  Ends ends = Ends::squared;        // of tenons on rails and muntins
  Ends loose_ends = Ends::squared;  // of loose ones
  std::optional<Length> cutter;     // that leaves ends round; none: as wide as the mortise
  Length loose_wall;
  std::optional<Flare> flare;  // of through mortises that are wedged
  Length over;                 // left on at the ends of tenons that come out
  Length fit_allowance;
  MortiseDesign mortise;
  Length haunch_depth;
  Length haunching;  // of rebated edges: depth of the haunch's own seat

  JointWord at(JointPlace place) const { return words[static_cast<std::size_t>(place)]; }
};

struct PanelPlan {
  PanelKind kind = PanelKind::solid;
  std::string material;  // of what is not solid wood
  Length thickness;
  Length tongue;     // thickness of its edge
  Length allowance;  // groove width minus tongue, as designed
  Length gap_across, gap_along;
  Rebate rebate = Rebate::back;  // where it is rebated or raised
  bool rebated = false;
  Length front_waste;  // off over the tongue at the face side; the rest of it comes off the back
  std::optional<RaiseDesign> raise;
  std::optional<GlassDesign> glass;  // then nothing else but its kind is of account
  Grain grain = Grain::upright;
  Held held = Held::nowhere;

  /// Thicker than its tongue all round its edge.
  bool has_waste() const { return rebated || raise; }

  /// The gaps at a panel's two upright edges, and at its two level ones.
  Length gap_at_sides() const { return grain == Grain::upright ? gap_across : gap_along; }
  /// Along an arch, which runs across both.
  Length gap_at_arch() const { return std::max(gap_across, gap_along); }
  Length gap_at_ends() const { return grain == Grain::upright ? gap_along : gap_across; }
};

/// Hinges on one stile, let in to its edge from the face side.
struct HingePlan {
  std::vector<Length> feet;  // of each, above the leaf's foot; lowest first
  Length length, width, thickness;
};

/// "top hinge": the one of that number, counted from the foot, of so many.
std::string hinge_name(std::size_t number, std::size_t of);

/// The case of a mortise lock.
struct LockCase {
  Length height, depth, thickness;
};

/// The holes of a bored lock: through the stile, and from its edge to there.
struct LockBore {
  Length diameter, latch;
};

struct PlatePlan {
  Length length, width, thickness;
};

/// A hole through the stile at the lock's backset.
struct HolePlan {
  Length height;  // above the leaf's foot
  Length diameter;
};

/// A lock let in to the other stile, in the middle of its thickness.
struct LockPlan {
  Length height;                 // its middle above the leaf's foot
  Length backset;                // from the stile's edge to its holes; zero: it has none
  std::optional<LockCase> body;  // of a lock one of body and bore
  std::optional<LockBore> bore;
  std::optional<PlatePlan> plate;
  std::optional<HolePlan> spindle, key;
};

struct FittingsPlan {
  bool hangs_left = true;
  std::optional<HingePlan> hinges;
  std::optional<LockPlan> lock;
};

/// Every size of a leaf of grooved frame and panels.
struct DoorPlan {
  FramePlan frame;
  EdgeDesign edge;
  GrooveDesign groove;  // of rebated edges the rebate
  JoinPlan join;
  std::vector<TenonDesign> rail_tenons;      // of each rail, both ends alike
  std::vector<MortiseDesign> rail_mortises;  // of each rail
  TenonDesign muntin_tenon;
  MortiseDesign muntin_mortise;
  std::vector<DowelDesign> rail_dowels;  // of each rail; none in one that is joined otherwise
  DowelDesign muntin_dowels;
  std::vector<PinDesign> rail_pins;   // of each rail; none in one that has no pins
  PinDesign muntin_pins;              // of all muntins, likewise
  Length lap_from_face;               // of half-laps
  SplineDesign spline;                // of mitres
  std::vector<PanelPlan> panels;      // of each tier, from the top
  std::vector<Length> glass_rebates;  // of each tier, from the top; 0: no glass

  /// Whether the tenons stand wholly before the rebate of the edges, which is at the back.
  bool tenons_before_rebate() const;
  /// How deep the edges about a tier are worked: the groove, or a deeper rebate.
  Length edge_depth(std::size_t tier) const { return std::max(groove.depth, glass_rebates[tier]); }
  /// How far an end without a tenon goes past the sight edge: over a moulding, into a rebate, or
  /// where a moulding is cut away for it.
  Length flat_reach() const { return edge.rebated() ? groove.depth : edge.width; }
  /// Of the thickness what an end without a tenon has in one plane: behind or between mouldings; of
  /// what lies before and behind a rebate's wall the thicker.
  Strip level_at_end() const;
  bool has_glass() const;
  Length deepest_edge() const;
  /// The deepest of the edges that muntins have: their tenons lose so much at each.
  Length muntin_edge() const;
  FittingsPlan fittings;

  const DoorJoint& joint_at(JointPlace place) const { return door_joint(join.at(place)); }
  /// How a rail is joined to its stiles.
  const DoorJoint& joint_of(std::size_t rail) const { return joint_at(frame.place_of(rail)); }
  /// Whether the joints at a place are stubs in the groove, and whether they are tenons in
  /// mortises.
  bool is_stub(JointPlace place) const;
  bool has_mortises_at(JointPlace place) const;
  /// Whether the leaf has joints at a place; whether any that it has are made so.
  bool occurs(JointPlace place) const;
  bool has_at(JointPlace place, JointWord joint) const {
    return occurs(place) && join.at(place) == joint;
  }
  bool has(JointWord joint) const;
  bool has(bool DoorJoint::*what) const;
  /// Whether any tenon ends in the wood that it enters.
  bool has_blind_tenons() const;
};

using PlannedDoor = Planned<DoorPlan>;

/// The gap at a panel's edges that its seasons ask for, where it is not the usual one.
struct SeasonGap {
  Length gap;
  std::string why;
};
struct SeasonGaps {
  std::optional<SeasonGap> across, along;
};

/// Which leaf of a pair is planned; one alone is the left one.
enum class WhichLeaf { left, right };

/// Settles every size. The unit is that of the spec, millimetres where it has none. `gaps`, of each
/// tier from the top or one for all, are taken where the spec leaves them open.
PlannedDoor plan_door(const Spec& spec, const std::vector<SeasonGaps>& gaps = {},
                      WhichLeaf leaf = WhichLeaf::left);

/// What a spec says that cannot all be true, told from its values alone: panels over tiers, and
/// their number. A
/// matter whose values could not be read (they have a problem in `reading` already) is left alone.
std::vector<Problem> contradictions(const Spec& spec, const std::vector<Problem>& reading);

}  // namespace haunch
