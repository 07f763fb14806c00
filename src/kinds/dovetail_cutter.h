// The cutter that a drawer's dovetails are cut by, whose sizes rule theirs.
#pragma once

#include <optional>

#include "ledger.h"

namespace haunch {

/// Widest at its end; from there its sides come in up to its neck.
struct DovetailCutter {
  Length diameter;  // at its end
  Length height;    // of its edges
  int angle = 0;    // of its sides to its axis, in degrees
  Length neck;

  /// How much narrower it is at each side, so far from its end: a tail's spread over its length.
  Length comes_in(Length from_end) const;
  /// What it takes away where it stands so deep, at the surface.
  Length at_surface(Length depth) const { return diameter - comes_in(depth) * 2; }
};

/// The one that spec or shop speak of; the shop's gives way to a slope that the spec says.
std::optional<DovetailCutter> settle_dovetail_cutter(Ledger& ledger);

/// What it leaves otherwise than saw and chisel.
Caution told_of_cutter(const DovetailCutter& cutter, Unit unit);

}  // namespace haunch
