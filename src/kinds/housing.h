// The end of a piece let whole into another: into a housing, or into a rebate at the other's end.
#pragma once

#include "end_joint.h"
#include "haunch/wood.h"

namespace haunch {

struct HousingDesign {
  Length depth;
  Length allowance;    // width of the housing minus what stands in it, half at each side
  Length stop = {};    // a stopped one ends so far behind the low edge of what stands in it
  bool round = false;  // its stopped end is, as a cutter as wide as it leaves it
};

extern const Measures kHousingMeasures;

/// The end stands in a housing through the whole width of the receiver, or in one that ends behind
/// its low edge, which is notched for that.
class Housing : public EndJoint {
 public:
  explicit Housing(const HousingDesign& housing) : housing_(housing) {}
  Length reach() const override { return housing_.depth; }
  void cut(Assembly& assembly, const End& end) const override;

 private:
  HousingDesign housing_;
};

/// The receiver is cut away from the low face of what enters to its own end, so deep: the entering
/// piece rests on what is left. At the low end of the receiver it is the other way round.
class RebatedCorner : public EndJoint {
 public:
  explicit RebatedCorner(Length depth, bool at_low_end = false)
      : depth_(depth), at_low_end_(at_low_end) {}
  Length reach() const override { return depth_; }
  void cut(Assembly& assembly, const End& end) const override;

 private:
  Length depth_;
  bool at_low_end_;
};

}  // namespace haunch
