// The case of a cabinet with every size settled: sides, top and bottom, back, toe, and what stands
// between them.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "haunch/wood.h"
#include "kind.h"
#include "layout.h"
#include "ledger.h"
#include "season_spec.h"
#include "shelf_pins.h"
#include "tail_spacing.h"

namespace haunch {

/// What pieces are made of.
struct Stuff {
  std::string material;
  Matter matter = Matter::wood;
  Length thickness;  // as it measures
};

struct BackPlan {
  BackFit fit = BackFit::grooved;
  bool framed = false;
  std::optional<Assembly> made;  // of a framed one, as it is made
  Stuff stuff;
  Length depth;      // of its grooves or rebates
  Length from_back;  // of its grooves, from the rear edge of the case
  Length gap;        // how much shorter it is than those at each edge
  Length groove;     // their width
};

/// Square blocks below the corners.
struct FeetPlan {
  Length width, from_edge;
};

/// Strips glued to the edges of its parts; 0: none.
struct StripPlan {
  Length front, rear;
  std::string material;
};

/// What it hangs on: a rail that is screwed to the wall, or two cleats that hook.
struct HangingPlan {
  bool cleat = false;
  Length height;
};

/// What the neighbour of a cabinet in a corner stands before: a panel, and a filler beside it that
/// keeps fronts clear of the neighbour's.
struct BlindPlan {
  bool right = false;  // at which side
  Length width;        // from the case's outside to the filler
  Length filler;       // its board, with what a front lies over of it
};

struct ToePlan {
  std::optional<FeetPlan> feet = {};
  ToeBy by = ToeBy::none;
  Length height;
  Length setback;     // of its board, behind the front of all
  Length clear = {};  // below its board, which hangs from the case and swells

  bool is_there() const { return by != ToeBy::none; }
};

/// Dowels in the ends of what stands between others.
struct CaseDowels {
  Length bore, diameter;
  Length depth;  // in the face that an end stands on
  Length depth_in_end;
  Length bottom;  // left of each hole below its dowel
  Length from_edge, spacing;

  /// Near walls of the holes in an end so wide, evenly: at least two.
  std::vector<Length> across(Length width) const;
};

/// Dovetails at its corners.
struct CaseTails {
  SettledTails settled;
  Length length;  // what the lap leaves of the sides
  Length spread;

  /// On an end so wide, from its front edge; `groove` is to come out in one of them. Empty where
  /// they have no room.
  std::vector<Strip> across(Length width, std::optional<Strip> groove) const;
};

/// What a shelf carries: so much in all, or for each metre of its length.
struct ShelfLoad {
  double kg = 0;
  bool each_metre = false;
  /// Of a shelf so long, in kg.
  double of(Length length) const;
};

/// What a shelf is taken to carry that is for books, clothes, crockery.
ShelfLoad usual_load(Load load);

/// A partition, a fixed shelf or a rail that drawers run on, where the layout has a divider or a
/// node fixed shelves. Its ends stand on others that come before it, or on the case itself.
struct InnerPlan {
  bool upright = false;
  Role role = Role::shelf;
  Area at;                               // between what its ends stand on
  std::optional<std::size_t> low, high;  // what those are, by index; none: the case itself
  bool low_opposed = false, high_opposed = false;  // another stands there from the other side
  std::optional<ShelfLoad> load;
  Length set_back = {};                 // its front edge, behind those of the case
  std::optional<CaseJoint> joint = {};  // of a shelf that says its own
  std::optional<Stuff> stuff = {};      // the same; else as the case
};

/// Loose shelves behind one opening.
struct LooseShelves {
  Area room;  // clear, between what bounds it
  int count = 0;
  Stuff stuff;
  Length play;   // less than the clear width, in all
  Length front;  // their front edges, behind the front of all
  ShelfLoad load;
  std::optional<std::size_t> left, right;  // what bounds them, by index; none: the sides
  PinRows pins;
};

/// A screw through a strip that is fixed across a side which moves: the foremost holds it, the
/// others let the side move.
struct RunScrew {
  Length at;    // its middle, behind the strip's front end
  Length slot;  // how much longer than wide its slot is; 0: a round hole
};

/// What a drawer runs on, is held down or led by: a strip from front to back, fixed to what bounds
/// the drawer's room.
struct RunPlan {
  Role role = Role::runner;
  bool right = false;                 // of the room
  Area at;                            // as it is seen from the front
  Length front;                       // its front end, behind the front of all
  std::optional<std::size_t> fixed;   // to which inner piece; none: to a side
  Length depth = {};                  // in the housing of the rail before it; 0: planted
  Length behind = {};                 // left before the back, which comes forward as sides shrink
  std::vector<RunScrew> screws = {};  // none: how it is fixed does not matter
};

struct CarcasePlan {
  Length width, height, depth;  // over its wood, but for what is planted on its back
  Length front;                 // its front edges, behind the front of all
  Length over;                  // how far the face frame stands over it at the left
  Stuff stuff;
  SeasonalPart season;  // of its stuff; board stands still
  Length screw;         // diameter of holes for screws
  CaseJoint joint = CaseJoint::housed;
  Length joint_depth, opposed_depth, allowance, stop;
  bool round_stop = false;  // housings are cut with a router, which leaves their stopped ends round
  Length tongue, below_tongue;  // bare-faced tongues: how thick, and what their housings leave
  std::optional<CaseDowels> dowels;
  std::optional<CaseTails> tails;
  bool framed_ends = false;
  std::optional<Assembly> end;  // of framed ones, as it is made: from its zero at its face
  CaseEnd top = CaseEnd::whole, bottom = CaseEnd::whole;
  Length rail_width;
  Length floor;  // upper face of the bottom; where there is none, of what would be
  BackPlan back;
  ToePlan toe;
  StripPlan strips;
  std::optional<HangingPlan> hanging;
  std::optional<BlindPlan> blind;
  std::vector<InnerPlan> inner;
  std::vector<LooseShelves> loose;
  std::vector<RunPlan> runs;

  Length foot() const {
    return toe.by == ToeBy::legs || toe.by == ToeBy::base ? toe.height : Length();
  }
  /// Whether something lies before its front edges.
  bool is_framed() const { return front > Length(); }
  /// How far an inner piece goes into what its end stands on; butted ones do not.
  Length depth_at(const InnerPlan& its, bool high_end) const {
    return (high_end ? its.high_opposed : its.low_opposed) ? opposed_depth : joint_depth;
  }
  /// Of a side.
  Length side_thickness() const { return end ? end->size[2] : stuff.thickness; }
  Length inside_left() const { return over + side_thickness(); }
  Length inside_right() const { return over + width - side_thickness(); }
  /// Where openings begin and end.
  Length sight_left() const {
    return blind && !blind->right ? over + blind->width + blind->filler : inside_left();
  }
  Length sight_right() const {
    return blind && blind->right ? over + width - blind->width - blind->filler : inside_right();
  }
  /// The lower face of a whole top, or of its rails; where there is neither the top of the sides.
  Length ceiling() const { return top == CaseEnd::none ? height : height - stuff.thickness; }
  /// Whether its bottom ends with the sides.
  bool bottom_at_end() const { return foot() == floor - stuff.thickness; }
  /// Where the back stands, as it is seen from the front.
  Area back_area() const;
  /// Behind all that ends before the back.
  Length back_front() const;
  /// The back's face, in the middle of its grooves.
  Length back_face() const;
  /// How wide a whole top or bottom is, from its front edge to its rear one.
  Length whole_width() const;
  /// The groove of the back in such a one, from its front edge.
  std::optional<Strip> back_groove() const;
  /// The rear edges of the sides.
  Length rear() const { return front + depth; }
};

/// Settles all but what hangs on the layout, on the whole's size and on the frame before it.
CarcasePlan settle_carcase(Ledger& ledger);

/// Settles what a joint needs of the case, where it is not settled yet.
void settle_case_joint(Ledger& ledger, CarcasePlan& plan, CaseJoint joint);

/// Keys of joints that this case has nowhere, where the spec says them all the same.
void refuse_idle_joints(Ledger& ledger, const CarcasePlan& plan);

/// A material that is written in a spec: a sheet, glass, or a wood.
Matter matter_of(std::string_view material);

}  // namespace haunch
