// How the pieces of an assembly are made: where their shoulders stand, and every operation on them.
#pragma once

#include <vector>

#include "operation.h"

namespace haunch {

struct Making {
  std::vector<Shoulders> shoulders;   // of every piece, in their order
  std::vector<Operation> operations;  // by what they make
};

Making making_of(const Assembly& wood);

/// A run to those of the same setting.
void add_run(Making& making, const Operation& setting, Run run);

}  // namespace haunch
