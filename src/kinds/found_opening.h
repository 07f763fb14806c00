// An opening as it was found: measured at the head, in the middle and at the foot, out of square as
// old walls are. From the readings follow its shape, and the largest square opening within it,
// which all else is worked with.
#pragma once

#include <array>
#include <optional>

#include "haunch/length_text.h"
#include "haunch/wood.h"

namespace haunch {

/// What the tape reads.
struct OpeningReadings {
  std::array<Length, 3> widths;     // at the head, in the middle, at the foot
  std::array<Length, 3> heights;    // left, in the middle, right
  std::array<Length, 2> diagonals;  // lower left to upper right, lower right to upper left
};

/// From here on readings that do not go together are a fault; the tightest is worked with until
/// then.
inline constexpr Length kReadingsFault = Length::from_mm(10);

/// How far the second diagonal is from going with the widths, the heights and the first: so much it
/// would have to be longer; less than 0: shorter. Empty where no change of it makes a shape.
std::optional<Length> diagonal_short(const OpeningReadings& readings);

/// Whether that is more than readings to a millimetre explain: 2 mm.
bool disagree(Length diagonal_short);

struct SquareOpening {
  Length width, height;
  AsFound found;
};

/// The largest square opening, by its area, within what was measured. Where the jambs are nearer in
/// the middle than a straight line from head to foot is, each is taken to come in by half of that;
/// so are head and foot. What it is less than the tightest width and height is rounded up to 0.5 mm
/// or 1/64 in. Where readings disagree it goes into every shape that some of them make.
/// Readings that diagonal_short() knows an answer for.
SquareOpening largest_square(const OpeningReadings& readings, Unit unit);

/// What a leaf that follows the opening fills: the opening's own straight sides, the box round them
/// as the square one. Turned so that the most that has to be planed off a side is least.
SquareOpening box_to_follow(const OpeningReadings& readings, Unit unit);

}  // namespace haunch
