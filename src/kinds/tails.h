// What an end is cut to where it is let into another comb-wise: the tails of a dovetail, the
// fingers of a finger joint. One outline through the thickness, in two pieces.
#pragma once

#include <vector>

#include "end_joint.h"
#include "haunch/wood.h"

namespace haunch {

struct EndTails {
  std::vector<Strip> each;  // where they are widest, at their ends: from the low edge of their
                            // piece, lowest first
  Strip between;            // the edges of what receives them
  Length length;            // from the shoulder between them
  Length spread;            // how much each is narrower at its root, at each side
  Length play;              // of each between what stands beside it, both sides together
};

/// Cuts the end and what receives it, and adds the joint, which says of itself what it was designed
/// to have.
void cut_tails(Assembly& assembly, const Junction& junction, const EndTails& tails, Joint joint,
               FeatureKind on_end, FeatureKind in_receiver);

}  // namespace haunch
