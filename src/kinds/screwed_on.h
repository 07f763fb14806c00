// What lies flat on another piece and is screwed to it, through round holes, or through slots where
// it moves on it.
#pragma once

#include <vector>

#include "haunch/wood.h"
#include "junction.h"

namespace haunch {

/// Where a screw stands, in the axes of the junction.
struct ScrewPlace {
  Length across, through;
};

struct ScrewedOnDesign {
  bool from_receiver =
      false;    // the screws come through what receives; else through what lies on it
  Length hole;  // diameter of the holes that they go through
  Length slot;  // how much longer than that slots are, along `through`; 0: round holes
  std::vector<ScrewPlace> screws;
};

/// Bores for the screws of a joint, right through the piece that they come through.
void bore_screws(Assembly& assembly, const Junction& junction, const ScrewedOnDesign& design,
                 std::size_t joint);

/// Bores for the screws, right through the piece that they come through, and adds the joint.
void screw_on(Assembly& assembly, const Junction& junction, const ScrewedOnDesign& design);

}  // namespace haunch
