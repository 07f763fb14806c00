// What is let in across from a leaf's fittings: hinges and the lock's strike.
#pragma once

#include <optional>

#include "door_plan.h"
#include "haunch/wood.h"
#include "ledger.h"

namespace haunch {

/// A lock as it was let in to the edge of a leaf.
struct FoundLock {
  bool bored = false;
  Length middle;             // above the leaf's foot
  Length from_face;          // its middle
  Length height, thickness;  // of the case, or of the latch's bore
  std::optional<PlatePlan> plate;
};

/// The lock in the edge of a leaf that is not hung yet; none where it has none.
std::optional<FoundLock> lock_of(const Assembly& leaf);

/// What is cut for a lock in the wood across from it: behind a plate a mortise for latch and bolt.
struct StrikePlan {
  Length middle;     // above the leaf's foot
  Length from_face;  // face of the leaf to its middle
  Length length, width, depth;
  std::optional<PlatePlan> plate;
};

/// Settles the strike of a lock that shuts against wood `thick` where it is let in.
StrikePlan settle_strike(Ledger& ledger, const FoundLock& lock, Length thick);

/// One face of a piece of a set that stands across from a leaf's edge.
struct Across {
  std::size_t piece = 0;
  Length at;               // along x
  bool from_high = false;  // the piece lies at lower x
};

/// Lets the strike in across from a leaf of the set; false where it would reach beyond the piece.
bool let_in_strike(Assembly& set, const Across& across, std::size_t leaf, const StrikePlan& strike);

/// Lets the hinges of that leaf in across from it, as deep and as wide as in the leaf.
void let_in_hinges(Assembly& set, const Across& across, std::size_t leaf);

}  // namespace haunch
