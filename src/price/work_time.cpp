#include "work_time.h"

#include <cmath>

namespace haunch {
namespace {

constexpr std::int64_t kThousand = 1000;

/// A decimal of so many places, without zeros at its end.
std::string decimal_text(std::int64_t figure, int places) {
  std::string digits = std::to_string(figure);
  const auto wanted = static_cast<std::size_t>(places) + 1;
  if (digits.size() < wanted) digits.insert(0, wanted - digits.size(), '0');
  digits.insert(digits.size() - static_cast<std::size_t>(places), ".");
  digits.erase(digits.find_last_not_of('0') + 1);
  if (digits.back() == '.') digits.pop_back();
  return digits;
}

}  // namespace

WorkTime WorkTime::from_minutes(double minutes) {
  return from_minutes_thousandths(std::llround(minutes * kThousand));
}

WorkTime time_for(WorkTime each, Quantity quantity) {
  return {each.millionths / kThousand * quantity.thousandths};
}

std::string minutes_text(WorkTime time) {
  constexpr int kPlaces = 6;
  return decimal_text(time.millionths, kPlaces);
}

std::string quantity_text(Quantity quantity) {
  constexpr int kPlaces = 3;
  return decimal_text(quantity.thousandths, kPlaces);
}

}  // namespace haunch
