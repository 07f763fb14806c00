// The fronts of a whole that open, and what they are opened by.
#pragma once

#include <vector>

#include "family.h"

namespace haunch {

struct OpenedFront {
  const Fit& fit;
  std::size_t named = 0;  // a piece of it
  Box box;                // round all its wood
};

std::vector<OpenedFront> opened_fronts(const Bench& bench);

/// What a front that swings is opened by, `out` before it: at the edge away from its pin, a hand's
/// breadth from it at most.
Box handle_of(const OpenedFront& front, Length out);

/// Places of a front that swings, on its way to a right angle.
inline constexpr int kSwingSteps = 6;

/// From where it is no rounding of what slopes.
inline Length but_rounding(Length figure) {
  const Length kOff = Length::from_mm_thousandths(10);
  return figure < kOff && figure > -kOff ? Length() : figure;
}

}  // namespace haunch
