// Money in hundredths of a currency, and how it is rounded.
#pragma once

#include <compare>
#include <cstdint>
#include <string>

namespace haunch {

struct Money {
  std::int64_t hundredths = 0;

  Money& operator+=(const Money& more) {
    hundredths += more.hundredths;
    return *this;
  }
  friend Money operator+(Money a, const Money& b) { return a += b; }
  friend Money operator-(const Money& a, const Money& b) { return {a.hundredths - b.hundredths}; }
  friend auto operator<=>(const Money&, const Money&) = default;
};

/// The nearest hundredth, a half upwards. What decimals come to is off by far less than the
/// millionth of a hundredth within which a figure counts as that half.
Money to_hundredths(double amount);

/// "1234.50": decimal text, as it stands in JSON and CSV.
std::string money_text(const Money& money);

}  // namespace haunch
