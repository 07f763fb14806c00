// A drawer with every size settled: what the spec states, and the trade's or the shop's defaults
// for the rest.
//
// Places are told in the axes of its opening: from the lower left corner of that, at the plane that
// fronts are flush with or lie on, to the right, up, and to the back.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "dovetail_cutter.h"
#include "drawer_words.h"
#include "haunch/wood.h"
#include "planned.h"
#include "spec.h"
#include "tails.h"

namespace haunch {

/// What a drawer is made for.
struct DrawerRoom {
  Length width, height;  // of the sight opening
  Length depth;          // behind the plane of fronts, to what stands at its back
  Meets meets = Meets::inset;
  std::optional<Sides> gap;  // of an applied front that stands in the opening; empty: the drawer's
                             // own keys say
  Sides lap = {};            // how far a front lies over the opening's edges
};

/// How front or back meet the sides.
struct CornerPlan {
  DrawerCorner joint = DrawerCorner::dovetail;
  Length length;             // how far the one goes into the other
  std::vector<Strip> tails;  // or fingers, from the lower edge of the sides
  Length spread;             // of tails
  Length tongue;             // thickness
  Length room;               // left of a housing below its tongue, of a hole below its dowel
  Length set_in;             // of a housed back, from the ends of the sides
  Length dowel;              // diameter of holes
  Length dowel_depth;        // in each of two pieces
};

struct DrawerBottomPlan {
  std::string material;  // empty: the species of its role
  Matter matter = Matter::board;
  BottomFit fit = BottomFit::grooved;
  Length thickness;
  Length groove_depth, from_edge, allowance, gap;
  bool under_back = true;
  Length overhang;
  Length slip_width, slip_height;
  Length slot;  // how much longer than wide its screws' slots are, as it moves so far; 0: round

  Length groove_width() const { return thickness + allowance; }
  /// How far its edges stand in their grooves.
  Length bite() const { return groove_depth - gap; }
  /// Its upper side, above the lower edge of the sides: it lies on the lower walls of its grooves.
  Length top() const { return from_edge + thickness; }
};

struct RunnerPlan {
  RunnerKind kind = RunnerKind::wood;
  Length side, below, above;  // between box and opening
  Length length;              // of metal ones
  Length travel;
  // Screw holes in what metal ones are fixed to: middles, behind where the box begins.
  std::vector<Length> holes;
  Length hole;        // their diameter
  Length hole_above;  // from the box's lower edge to their row
};

struct DrawerPlan {
  DrawerRoom room;
  DrawerFront front = DrawerFront::in_one;
  Length front_thickness;
  Length lip;  // thickness of what lies over the opening's edges, of a front with a lip
  Box face;    // the front
  Box box;  // over its sides, from the face of what they are joined to in front to their rear ends
  std::string material;  // of the box but an in-one front; empty: the species of each role
  Matter matter = Matter::wood;
  Length side_thickness, back_thickness;
  Length box_front_thickness;  // where the front is applied
  Length fit_allowance;
  Length screw;  // diameter of the holes that screws go through
  CornerPlan front_corner, back_corner;
  std::optional<DovetailCutter> cutter;  // that cuts their tails and sockets
  DrawerBottomPlan bottom;
  RunnerPlan runner;

  bool is_applied() const { return front == DrawerFront::applied; }
  /// Of what the sides are joined to in front.
  Length joined_thickness() const { return is_applied() ? box_front_thickness : front_thickness; }
  /// Where its own zero and axes lie: at the front's lower left corner at its face.
  const Triple& at() const { return face.low; }
  /// To its rear, that of a bottom that goes on behind the back with it.
  Length rear() const { return box.high[2] + (bottom.under_back ? bottom.overhang : Length()); }
  /// The lower edge of the back, above that of the sides.
  Length back_low() const { return bottom.under_back ? bottom.top() : Length(); }
};

/// Whether the sides go into what they are joined to in front, or at the back; else that goes into
/// them.
bool sides_enter(const DrawerPlan& plan, const CornerPlan& corner, bool in_front);

using PlannedDrawer = Planned<DrawerPlan>;

/// What stands before a drawer's keys in the table, but not in a spec of a drawer alone.
inline constexpr std::string_view kDrawerRoot = "fronts.drawer.";

/// Settles every size of a drawer in a cabinet, in the room that it has there.
PlannedDrawer plan_drawer(const Spec& spec, const DrawerRoom& room);

/// The same of a drawer alone, in the room that its spec speaks of.
PlannedDrawer plan_drawer(const Spec& spec);

/// Whether drawers run on wood, as a spec says or is usual where it does not.
bool runs_on_wood(const Spec& spec);

/// A wood that is named as material is the species of what is made of it.
void take_drawer_woods(Spec& spec);

}  // namespace haunch
