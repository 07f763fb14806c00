#include "haunch/length_text.h"

namespace haunch {

std::string plain_inches(Length length, int denominator) {
  constexpr Length kSmall = Length::from_inch_parts(1, 4);
  constexpr int kPlaces = 4;
  const bool small = length < kSmall && -length < kSmall;
  const bool exact = nearest_multiple(length, Length::from_inch_parts(1, denominator)) == length;
  const FixedText decimals = fixed_decimal(length, Unit::inch, kPlaces);
  if (!small || exact || !decimals.exact) return inch_fraction(length, denominator);
  return decimal(length, Unit::inch);
}

std::string in_words(Length length, Unit unit) {
  constexpr int kFinestFraction = 64;  // the trade's finest rule
  if (unit == Unit::inch) return plain_inches(length, kFinestFraction) + " in";
  return decimal(nearest_multiple(length, Length::from_mm_thousandths(1)), Unit::mm) + " mm";
}

}  // namespace haunch
