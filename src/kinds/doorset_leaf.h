// The leaf of a set: its spec made from the set's, and its wood hung in the frame.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "document.h"
#include "haunch/wood.h"
#include "key_table.h"
#include "kind.h"

namespace haunch {

/// How the leaves of a set's pair meet.
struct PairKeys {
  Length clearance, lap, rest;
  bool right_first = true;
};

/// What a set's frame leaves to its leaf, or to both of a pair together.
struct LeafRoom {
  Length width, height;
  std::optional<PairKeys> pair;
  Sides lip;  // what of that stands over the frame and its clearances
};

/// Whether a leaf hangs on its right stile: as its keys say, else as the shop file does.
bool hangs_right(const Value* leaf, const Value* shop);

/// Whether a leaf's keys, or the shop file, have one of that name.
bool leaf_speaks_of(const Value& leaf, const Value* shop, std::string_view key);

/// A door's spec for the leaf of a set, or its pair: `leaf`, an object or null, with what the set
/// says instead.
Value leaf_document(const Value* leaf, const LeafRoom& room, const ItemHead& head);

/// Where a problem of that spec stands in the set's.
Problem of_the_set(Problem problem);

/// Planes the back of a hung leaf's lock edge off: the stile's wood slopes from nothing at the face
/// to `bevel` at the back.
void bevel_lock_edge(Assembly& set, const Hanging& hung, Length bevel);

}  // namespace haunch
