// Wedges that hold a through tenon, driven in at both its edges from where it comes out.
#pragma once

#include "end_joint.h"

namespace haunch {

extern const Measures kWedgeMeasures;

/// Of the end's first joint, whose mortise is flared for them: two for each tenon. Their grain runs
/// along the tenon's; they are as wide as the tenon is thick.
class Wedges : public EndJoint {
 public:
  void cut(Assembly&, const End&) const override {}
  Own own_pieces() const override { return Own::wedges; }
  void add_own_pieces(Assembly& assembly, const End& end) const override;
};

}  // namespace haunch
