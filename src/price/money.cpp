#include "money.h"

#include <cmath>

namespace haunch {

Money to_hundredths(double amount) {
  constexpr double kNearHalf = 1e-6;
  return {static_cast<std::int64_t>(std::floor(amount * 100 + 0.5 + kNearHalf))};
}

std::string money_text(const Money& money) {
  const std::int64_t size = std::abs(money.hundredths);
  const std::string cents = std::to_string(size % 100);
  return (money.hundredths < 0 ? "-" : "") + std::to_string(size / 100) + "." +
         (cents.size() < 2 ? "0" : "") + cents;
}

}  // namespace haunch
