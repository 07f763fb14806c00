#include "rounding.h"

#include <cmath>

namespace haunch {

Length nearest_step(double steps) {
  constexpr double kBeyond = 9223372036854775808.0;  // 2^63; a double below it fits in 64 bits
  const double whole = std::round(steps);
  const bool fits = whole >= -kBeyond && whole < kBeyond;  // false for what is not a number, too
  if (!fits) throw LengthOverflow();
  return Length::from_steps(static_cast<std::int64_t>(whole));
}

}  // namespace haunch
