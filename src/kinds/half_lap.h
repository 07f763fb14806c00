// Half-laps: two pieces cross or meet at a corner, each cut away to the other's lap, flush on both
// sides.
#pragma once

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
  explicit HalfLap(const LapDesign& lap) : lap_(lap) {}
  Length reach() const override { return lap_.reach; }
  bool runs_on() const override { return true; }
  void cut(Assembly& assembly, const End& end) const override;

 private:
  LapDesign lap_;
};

}  // namespace haunch
