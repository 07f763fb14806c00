// Frameworks with panels as sides or back of a case: leaves that do not open.
#pragma once

#include <string_view>
#include <vector>

#include "cabinet_plan.h"
#include "haunch/wood.h"
#include "kind.h"
#include "spec.h"

namespace haunch {

/// Which part of a case one is.
struct FrameworkPart {
  std::string_view what;   // "a framed end"
  std::string_view keys;   // what its keys stand under, dotted
  std::string_view asked;  // the key that asks for it, dotted
};

struct MadeFramework {
  Assembly wood;
  std::vector<Assumed> assumed;
  std::vector<Problem> problems;  // when there are any, there is no wood
};

/// Makes it of what is said of it: so wide, and so high.
MadeFramework make_framework(const CabinetSpec& cabinet, Spec its, const FrameworkPart& part,
                             Length width, Length height);

}  // namespace haunch
