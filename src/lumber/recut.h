// A solution made better bit by bit: some of its boards are laid out anew.
//
//   Recut      one try after the other
#pragma once

#include <vector>

#include "random.h"
#include "value_correction.h"

namespace haunch::lumber {

class Recut {
 public:
  Recut(const Model& model, Corrector& corrector, std::uint64_t seed);

  /// The solution with the parts of a few of its boards laid out anew, by values near their areas
  /// or near `values`; no worse than before or, more often, worse.
  Solution once(const Solution& solution, const std::vector<double>& values);

 private:
  const Model& model_;
  Corrector& corrector_;
  Random random_;
};

}  // namespace haunch::lumber
