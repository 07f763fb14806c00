// What a spec of `kind: "doorset"` may say, and reading it.
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "frame_spec.h"
#include "key_table.h"
#include "season_spec.h"

namespace haunch {

/// The keys of a set itself; those of its frame and its leaf stand in "frame" and "leaf".
const KeyTable& doorset_keys();

struct DoorsetReading {
  FrameReading frame;  // its head names the set
  KeyedValues values;
  int leaves = 1;
  SeasonSpec season;            // without species
  const Value* leaf = nullptr;  // the leaf's keys, an object of the item; none where it is silent
  std::vector<Problem> problems;
};

DoorsetReading read_doorset_spec(const Value& item, const ShopDefaults* shop);

}  // namespace haunch
