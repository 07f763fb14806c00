// Dowels: the end of a piece stands flat on what receives it, held by round pegs that are let into
// both.
#pragma once

#include <optional>
#include <utility>
#include <vector>

#include "edge.h"
#include "end_joint.h"
#include "haunch/wood.h"

namespace haunch {

struct DowelDesign {
  Length bore;                    // diameter of the holes
  Length diameter;                // of the dowels: less, by the fit allowance
  Length depth;                   // of each dowel in what receives the end
  Length bottom;                  // left of each hole below its dowel
  Length from_face;               // face side to the near wall of each hole
  std::vector<Length> from_edge;  // near walls of the holes across the width of the piece whose end
                                  // they hold, lowest or leftmost first
  std::optional<Length> depth_in_end = {};  // else the same

  Length in_end() const { return depth_in_end.value_or(depth); }
};

extern const Measures kDowelMeasures;

/// End and edge meet. Both are bored, and the dowels let in: a piece each, and a joint each with
/// both members.
class Dowels : public EndJoint {
 public:
  explicit Dowels(DowelDesign dowels, const FlatEnd& flat = {})
      : dowels_(std::move(dowels)), flat_(flat) {}
  Length reach() const override { return flat_.reach; }
  Length set_back() const override { return flat_.set_back; }
  bool fills_groove() const override { return flat_.fills_rebate; }
  void cut(Assembly& assembly, const End& end) const override { stand(assembly, end, flat_); }
  Own own_pieces() const override { return Own::dowels; }
  void add_own_pieces(Assembly& assembly, const End& end) const override;

 private:
  DowelDesign dowels_;
  FlatEnd flat_;
};

}  // namespace haunch
