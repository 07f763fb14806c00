// Rows of holes for the pins that loose shelves lie on.
#pragma once

#include <optional>
#include <vector>

#include "cup_hinge.h"
#include "haunch/wood.h"
#include "ledger.h"

namespace haunch {

/// What is alike of all rows in a case.
struct PinHoles {
  Length pitch, diameter, depth;
  Length from_front;  // from the front edge, or the back of a front that stands in the case
  std::optional<Length> first;  // from the lower end of the clear height; silent: rows are balanced
};

/// What pins are bored in.
struct PinPlace {
  Length thickness;
  bool from_both_faces = false;
  bool stiles = false;  // of a framed end, which are not wide
};

/// Clear of the plates of hinges, where there are any: in one line with them holes would run into
/// each other.
PinHoles settle_pin_holes(Ledger& ledger, const std::optional<CupHinges>& hinges,
                          const PinPlace& place);

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

/// Bores one of the two, so far behind the front of all, in the face of a piece that looks to the
/// right, or to the left.
void bore_row(Piece& piece, bool looks_right, const PinRows& rows, Length row);

}  // namespace haunch
