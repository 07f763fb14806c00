// A notebook of what work took, as CSV: order,operation,minutes,pieces,date.
//
// Only order and minutes must be there. An empty operation means the whole order; empty pieces all
// that are planned.
#pragma once

#include <string_view>
#include <vector>

#include "actuals.h"

namespace haunch {

struct ActualsReading {
  std::vector<ActualRow> rows;    // none with problems
  std::vector<Problem> problems;  // with offsets
};

ActualsReading read_actuals(std::string_view text);

}  // namespace haunch
