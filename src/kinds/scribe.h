// Scribing by subtraction: an end that stands on a worked edge goes on as far as it can, over
// mouldings and into rebates, less the wood that stands there. One place for all joints and all
// edges: what the edge is worked to is read from the receiver's own features, and where shoulders
// stand from what is left of the end.
#pragma once

#include <vector>

#include "end_joint.h"
#include "haunch/wood.h"
#include "junction.h"

namespace haunch {

/// An edge as what ends on it meets it, seen along the edge: `u` how far its wood is worked back
/// from the sight edge, `v` through the thickness, from the face side to the back. v never falls;
/// where it stays, the wood has a step.
struct EdgeProfile {
  std::vector<Corner> line;

  Length at_face() const { return line.front().u; }
  Length at_back() const { return line.back().u; }
  Length furthest() const;
  Length nearest() const;
  /// Of a stretch of the thickness alone.
  EdgeProfile over(Strip through) const;
  /// Of a stretch whose ends lie before or behind the `seat` of a shoulder, in the play of a
  /// mortise: what stands there goes with the seat beside it, so that it is in one plane with that.
  /// Beside the mortise it does so only where the wood leaves room.
  EdgeProfile seated(Strip through, Strip seat, bool in_mortise) const;
};

/// The profile of the receiver's edge in the middle of what ends there, as mouldings and rebates
/// have left it, or a moulding that is cut away for shoulders. Grooves count for nothing: panels,
/// haunches and stubs fill them. Call it once the edge is worked and before the end is cut.
EdgeProfile worked_edge(const Assembly& assembly, const Junction& junction);

/// How far past the sight edge an end stands whose joint is cut already, over a stretch of the
/// thickness: of two planes there the nearer.
Length stands_at(const Assembly& assembly, const Junction& junction, Strip through);

/// What is sawn or cut off an end, in the axes of its junction.
struct Waste {
  std::vector<Box> cuts;
  std::vector<Prism> prisms;

  bool empty() const { return cuts.empty() && prisms.empty(); }
};

/// What of `room` lies beyond a profile, in the receiver's wood; it runs straight across.
Waste beyond(const EdgeProfile& profile, const Box& room);

/// Adds waste to what is worked on the piece that lies at `place`.
void cut_off(Feature& feature, const Waste& waste, const Junction& junction, const Place& place);

}  // namespace haunch
