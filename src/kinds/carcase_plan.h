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
#include "shelf_pins.h"

namespace haunch {

/// What pieces are made of.
struct Stuff {
  std::string material;
  Matter matter = Matter::wood;
  Length thickness;  // as it measures
};

struct BackPlan {
  BackFit fit = BackFit::grooved;
  Stuff stuff;
  Length depth;      // of its grooves or rebates
  Length from_back;  // of its grooves, from the rear edge of the case
  Length gap;        // how much shorter it is than those at each edge
  Length groove;     // their width
};

struct ToePlan {
  ToeBy by = ToeBy::none;
  Length height;
  Length setback;  // of its board, behind the front of all

  bool is_there() const { return by != ToeBy::none; }
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

/// What a drawer runs on, is held down or led by: a strip from front to back, fixed to what bounds
/// the drawer's room.
struct RunPlan {
  Role role = Role::runner;
  bool right = false;                // of the room
  Area at;                           // as it is seen from the front
  Length front;                      // its front end, behind the front of all
  std::optional<std::size_t> fixed;  // to which inner piece; none: to a side
  Length depth = {};                 // in the housing of the rail before it; 0: planted
};

struct CarcasePlan {
  Length width, height, depth;  // over its wood, but for what is planted on its back
  Length front;                 // its front edges, behind the front of all
  Length over;                  // how far the face frame stands over it at the left
  Stuff stuff;
  CaseJoint joint = CaseJoint::housed;
  Length joint_depth, opposed_depth, allowance, stop;
  Length tongue, below_tongue;  // bare-faced tongues: how thick, and what their housings leave
  CaseEnd top = CaseEnd::whole, bottom = CaseEnd::whole;
  Length rail_width;
  Length floor;  // upper face of the bottom; where there is none, of what would be
  BackPlan back;
  ToePlan toe;
  std::vector<InnerPlan> inner;
  std::vector<LooseShelves> loose;
  std::vector<RunPlan> runs;

  Length foot() const {
    return toe.by == ToeBy::legs || toe.by == ToeBy::base ? toe.height : Length();
  }
  /// How far an inner piece goes into what its end stands on; butted ones do not.
  Length depth_at(const InnerPlan& its, bool high_end) const {
    return (high_end ? its.high_opposed : its.low_opposed) ? opposed_depth : joint_depth;
  }
  Length inside_left() const { return over + stuff.thickness; }
  Length inside_right() const { return over + width - stuff.thickness; }
  /// The lower face of a whole top, or of its rails; where there is neither the top of the sides.
  Length ceiling() const { return top == CaseEnd::none ? height : height - stuff.thickness; }
  /// Behind all that ends before the back.
  Length back_front() const;
  /// The rear edges of the sides.
  Length rear() const { return front + depth; }
};

/// Settles all but what hangs on the layout, on the whole's size and on the frame before it.
CarcasePlan settle_carcase(Ledger& ledger);

/// A material that is written in a spec: a sheet, or a wood.
Matter matter_of(std::string_view material);

}  // namespace haunch
