// Finger joints: two ends cut to fingers of one width, which stand between each other.
#pragma once

#include <vector>

#include "end_joint.h"
#include "haunch/wood.h"
#include "tails.h"

namespace haunch {

/// The fingers of what enters: every other one of an odd number of equal shares of the way across,
/// the first and the last among them, about as wide as `width`. Odd steps go to the last shares.
std::vector<Strip> share_fingers(Strip between, Length width);

struct FingerDesign {
  std::vector<Strip> fingers;  // as of share_fingers
  Length allowance;            // slot minus finger
};

extern const Measures kFingerMeasures;

class Fingers : public EndJoint {
 public:
  /// `length`: the receiver's thickness.
  Fingers(FingerDesign fingers, Length length) : fingers_(std::move(fingers)), length_(length) {}
  Length reach() const override { return length_; }
  void cut(Assembly& assembly, const End& end) const override;

 private:
  FingerDesign fingers_;
  Length length_;
};

}  // namespace haunch
