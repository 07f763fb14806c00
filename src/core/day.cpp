#include "day.h"

#include <algorithm>
#include <charconv>

namespace haunch {
namespace {

constexpr std::string_view kForm = "dddd-dd-dd";

bool has_form(std::string_view text) {
  return std::ranges::equal(text, kForm, [](char written, char wanted) {
    return wanted == 'd' ? written >= '0' && written <= '9' : written == wanted;
  });
}

unsigned number_of(std::string_view digits) {
  unsigned number = 0;
  std::from_chars(digits.data(), digits.data() + digits.size(), number);
  return number;
}

std::string digits_of(unsigned number, std::size_t width) {
  const std::string digits = std::to_string(number);
  return std::string(width - std::min(width, digits.size()), '0') + digits;
}

}  // namespace

std::optional<std::chrono::sys_days> day_of(std::string_view text) {
  if (!has_form(text)) return {};
  const std::chrono::year_month_day day(
      std::chrono::year(static_cast<int>(number_of(text.substr(0, 4)))),
      std::chrono::month(number_of(text.substr(5, 2))),
      std::chrono::day(number_of(text.substr(8, 2))));
  if (!day.ok()) return {};
  return std::chrono::sys_days(day);
}

std::string day_text(std::chrono::sys_days day) {
  const std::chrono::year_month_day parts(day);
  return digits_of(static_cast<unsigned>(static_cast<int>(parts.year())), 4) + "-" +
         digits_of(static_cast<unsigned>(parts.month()), 2) + "-" +
         digits_of(static_cast<unsigned>(parts.day()), 2);
}

}  // namespace haunch
