// What a spec of `kind: "doorset"` may say, and reading it.
#pragma once

#include <vector>

#include "kind.h"
#include "spec.h"

namespace haunch {

struct DoorsetReading {
  Spec spec;  // the set's keys, and its frame's
  Spec leaf;  // a door's, but for what the set says of it once its frame is planned
  std::vector<Given> given;
  std::vector<Problem> problems;
};

/// Reads a set, filled from the shop file, which may be null.
DoorsetReading read_doorset_spec(const Value& item, const ShopDefaults* shop);

/// What a leaf cannot say, as its set does.
bool is_said_by_set(Key key_of_leaf);

}  // namespace haunch
