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

/// A partition or a fixed shelf, where the layout has a divider.
struct InnerPlan {
  bool upright = false;
  Area at;      // as it is seen from the front; of an upright one left and right count, …
  Bounding by;  // what its ends stand on: dividers with a piece of their own, or the case
  std::size_t divider = 0;
  bool rail = false;  // no more than a rail at the front, for drawers to run on
};

/// Loose shelves behind one opening.
struct LooseShelves {
  std::string path;  // of the node
  Area room;         // clear, between what bounds it
  int count = 0;
  Stuff stuff;
  std::optional<double> load;  // kg each
};

struct CarcasePlan {
  Length width, height, depth;  // over its wood, but for what is planted on its back
  Length front;                 // its front edges, behind the front of all
  Length over;                  // how far the face frame stands over it at the left
  Stuff stuff;
  CaseJoint joint = CaseJoint::housed;
  Length joint_depth, opposed_depth, allowance, stop;
  CaseEnd top = CaseEnd::whole, bottom = CaseEnd::whole;
  Length rail_width;
  Length floor;  // upper face of the bottom
  BackPlan back;
  ToePlan toe;
  std::vector<InnerPlan> inner;
  std::vector<LooseShelves> loose;

  Length inside_left() const { return over + stuff.thickness; }
  Length inside_right() const { return over + width - stuff.thickness; }
  /// The lower face of a whole top, or of its rails; where there is neither the top of the sides.
  Length ceiling() const { return top == CaseEnd::none ? height : height - stuff.thickness; }
  /// Behind all that ends before the back.
  Length back_front() const;
  /// The rear edges of the sides.
  Length rear() const { return front + depth; }
};

}  // namespace haunch
