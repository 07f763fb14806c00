// Half-laps: two pieces cross or meet at a corner, each cut away to the other's lap, flush on both
// sides.
#pragma once

#include "edge.h"
#include "end_joint.h"
#include "haunch/wood.h"

namespace haunch {

struct LapDesign {
  Length reach;           // how far the entering piece goes over the other: right across, or less
  Length from_face;       // face side to where the laps meet
  Length edge_clearance;  // at each edge of the entering lap that has wood beside it
  Length end_clearance;   // of a lap that stops short, at its end
};

extern const Measures kLapMeasures;

/// The entering piece keeps its back, so that the other is whole on the face side.
class HalfLap : public EndJoint {
 public:
  explicit HalfLap(const LapDesign& lap, const FlatEnd& front = {}) : lap_(lap), front_(front) {}
  Length reach() const override { return lap_.reach; }
  Length set_back() const override { return front_.set_back; }
  bool runs_on() const override { return true; }
  void cut(Assembly& assembly, const End& end) const override;

 private:
  LapDesign lap_;
  FlatEnd front_;  // of the half that is cut away, which has a shoulder
};

}  // namespace haunch
