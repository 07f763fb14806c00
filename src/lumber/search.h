// The search for a solution, and the bounds beside it.
//
//   Found       the best solution, and what bounds it
//   find        searches
#pragma once

#include <optional>

#include "pattern.h"

namespace haunch::lumber {

struct Found {
  Solution solution;
  Bounds bounds;
  bool proven_short = false;  // dual prices show that the stock cannot hold all
  std::int64_t work = 0;      // counted, of about a nanosecond each
};

/// Work grows with `effort`; it is counted, never timed. A solution that is known may be given:
/// what is found is as good at least.
Found find(const Model& model, int effort, std::uint64_t seed, std::optional<Solution> known);

}  // namespace haunch::lumber
