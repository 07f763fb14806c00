#include "haunch/length_text.h"

namespace haunch {

std::string in_words(Length length, Unit unit) {
  constexpr int kFinestFraction = 64;  // the trade's finest rule
  if (unit == Unit::inch) return inch_fraction(length, kFinestFraction) + " in";
  return decimal(nearest_multiple(length, Length::from_mm_thousandths(1)), Unit::mm) + " mm";
}

}  // namespace haunch
