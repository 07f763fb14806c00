// Rows of holes for the pins that loose shelves lie on.
#pragma once

#include <vector>

#include "haunch/wood.h"
#include "ledger.h"

namespace haunch {

/// What is alike of all rows in a case.
struct PinHoles {
  Length pitch, diameter, depth;
  Length from_front;  // from the front edge, or the back of a front that stands in the case
  std::optional<Length> first;  // from the lower end of the clear height; silent: rows are balanced
};

PinHoles settle_pin_holes(Ledger& ledger, Length thickness, bool from_both_faces);

/// A pair of rows beside one opening, and what lies on their pins.
struct PinRows {
  PinHoles holes;
  Length low;                     // end of the clear height
  Length first;                   // middle of the lowest hole that can be, above that
  Length front, rear;             // middles of the two rows, behind the front of all
  std::vector<std::size_t> used;  // holes that pins stand in, rising; 0 is the first
  std::size_t most = 0;           // the highest that can be

  /// Middle of a hole above the foot of all.
  Length height(std::size_t hole) const {
    return low + first + holes.pitch * static_cast<std::int64_t>(hole);
  }
  /// Underside of what lies on it.
  Length underside(std::size_t hole) const { return height(hole) + floor_half(holes.diameter); }
  /// Which are bored: those that pins stand in, and two above and below each to move it by.
  std::vector<std::size_t> bored() const;
};

/// Rows for so many shelves of a thickness, as nearly the same height apart as the holes let them
/// be. `front` and `rear`: ends of the clear depth behind the front of all.
PinRows rows_for(const PinHoles& holes, int shelves, Length thickness, Length low, Length high,
                 Length front, Length rear);

/// Bores them in the face of a piece that looks to the right, or to the left.
void bore_rows(Assembly& assembly, std::size_t piece, bool looks_right, const PinRows& rows);

}  // namespace haunch
