// The leaf of a set: its spec made whole by the set's, and its wood hung in the frame.
#pragma once

#include <initializer_list>
#include <optional>

#include "document.h"
#include "haunch/wood.h"
#include "spec.h"

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

/// A door's spec for the leaf of a set, or its pair: what was read of it, with what the set says
/// instead.
Spec leaf_in_room(Spec leaf, const LeafRoom& room);

/// What the whole that a leaf is of says of its wood, by these keys and those below them, and the
/// woods that it names.
void take_from_whole(Spec& leaf, const Spec& whole, std::initializer_list<Key> groups);

/// Where a problem of that spec stands in the set's.
Problem of_the_set(Problem problem);

/// Planes the back of a hung leaf's lock edge off: the stile's wood slopes from nothing at the face
/// to `bevel` at the back.
void bevel_lock_edge(Assembly& set, const Fit& hung, Length bevel);

}  // namespace haunch
