// How the dovetails of a drawer, or of a case, are spaced: what the spec states, and the trade's
// rules for the rest.
#pragma once

#include <string_view>

#include "dovetail.h"
#include "ledger.h"

namespace haunch {

/// The keys that speak of them.
struct TailKeys {
  Key number, slope;
  SizeKey widest, pin, half_pin;
};

/// What is usual of their pins.
struct UsualTails {
  Length pin;
  std::string_view why;
  Length widest;       // that tails of three such pins may be
  Length cutter = {};  // its diameter, where one cuts them: the slope is its own
};

struct SettledTails {
  TailSpacing spacing;  // but what lies between, the spread and a groove
  int slope = 0;        // goes out by 1 in so many at each side; 0: as the cutter
};

/// Settles all but what hangs on the piece that they are cut on.
SettledTails settle_tails(Ledger& ledger, const TailKeys& keys, const UsualTails& usual);

}  // namespace haunch
