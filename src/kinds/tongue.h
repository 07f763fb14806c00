// A tongue on the end of a piece, in a housing narrower than that is thick.
#pragma once

#include "end_joint.h"
#include "haunch/wood.h"

namespace haunch {

struct TongueDesign {
  Length length;  // from its shoulders
  Length thickness;
  Length from_face;  // low face of its piece to the near cheek; a bare-faced one has none there, or
                     // none behind it
  Length allowance;  // width of the housing minus the tongue, half at each side
  Length bottom;     // left of the housing below the tongue
};

extern const Measures kTongueMeasures;

/// The end is rebated to a tongue, and that stands in a housing through the whole width of the
/// receiver.
class Tongue : public EndJoint {
 public:
  explicit Tongue(const TongueDesign& tongue) : tongue_(tongue) {}
  Length reach() const override { return tongue_.length; }
  void cut(Assembly& assembly, const End& end) const override;

 private:
  TongueDesign tongue_;
};

}  // namespace haunch
