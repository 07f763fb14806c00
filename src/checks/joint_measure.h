// Measuring one joint in the wood, as at a dry fit.
#pragma once

#include <optional>
#include <vector>

#include "solid.h"

namespace haunch {

/// What a joint measures. Empty: there is nothing to measure from or to.
struct JointMeasure {
  Length reach;  // how far the entering wood goes past the receiver's sight edge; negative: it
                 // stays short of it
  std::optional<Length> cheeks;  // at the entering end, both sides together
  std::optional<Length> edges;   // at the entering end, both edges together
  std::optional<Length>
      edge;  // the lesser of the two edges, or the only one that has wood beside it
  std::optional<Length> bottom;  // from the entering end on
  // Between shoulder and what it stands on: of a tenon's two the one further off, or, where one is
  // longer, the short one.
  std::optional<Length> seat;
  std::optional<Length> long_seat;  // of the longer one
  Length line;                      // of the short shoulder, past the receiver's sight edge
  std::optional<Length> haunch;     // from what goes in less deep, the haunches, on
  std::optional<Length> bearing;    // from the entering end across, to what it rests on
  Length thickness;                 // of what enters, at its end
  std::vector<Length> widths;       // of each tenon, at its end, lowest first
  std::size_t side_by_side = 0;     // tenons in the thickness, at the end
};

/// Where along a tenon's cheeks, edges and end its clearances are measured: all over, or over the
/// middle half. Of wood that has moved, whose edges may press on the mortise's ends, only the
/// middle says what room its cheeks have.
enum class MeasuredOver { all_over, middle };

JointMeasure measure(const Joint& joint, const Solid& receives, const Solid& enters,
                     MeasuredOver where = MeasuredOver::all_over);

}  // namespace haunch
