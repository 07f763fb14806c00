// A side of a case that is a framework with panels: a leaf as deep as the case, whose face looks
// outwards.
#pragma once

#include <vector>

#include "cabinet_plan.h"
#include "haunch/wood.h"
#include "kind.h"

namespace haunch {

struct MadeEnd {
  Assembly wood;
  std::vector<Assumed> assumed;
  std::vector<Problem> problems;  // when there are any, there is no wood
};

/// Makes it of what `case.end` says: so wide from front to back, and so high.
MadeEnd make_framed_end(const CabinetSpec& spec, Length depth, Length height);

}  // namespace haunch
