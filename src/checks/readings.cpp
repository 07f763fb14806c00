#include "readings.h"

#include <array>
#include <cmath>

#include "rounding.h"

namespace haunch {
namespace {

// Quantiles for 1 to 10 degrees of freedom; beyond, the usual approximations differ from the tables
// by less than one part in a thousand.
constexpr std::array kStudent95 = {6.3138, 2.9200, 2.3534, 2.1318, 2.0150,
                                   1.9432, 1.8946, 1.8595, 1.8331, 1.8125};
constexpr std::array kChiSquare10 = {0.01579, 0.21072, 0.58437, 1.06362, 1.61031,
                                     2.20413, 2.83311, 3.48954, 4.16816, 4.86518};
constexpr std::array kChiSquare90 = {2.70554, 4.60517, 6.25139, 7.77944, 9.23636,
                                     10.6446, 12.0170, 13.3616, 14.6837, 15.9872};
constexpr double kNormal95 = 1.6448536;
constexpr double kNormal90 = 1.2815516;

/// Cornish and Fisher's expansion beyond the table.
double student_95(std::size_t freedom) {
  if (freedom <= kStudent95.size()) return kStudent95[freedom - 1];
  const auto n = static_cast<double>(freedom);
  const double z = kNormal95;
  const double z3 = z * z * z;
  return z + (z3 + z) / (4 * n) + (5 * z3 * z * z + 16 * z3 + 3 * z) / (96 * n * n);
}

/// Wilson and Hilferty's cube beyond the table, at so many standard deviations.
double chi_square(const std::array<double, 10>& table, double deviations, std::size_t freedom) {
  if (freedom <= table.size()) return table[freedom - 1];
  const auto n = static_cast<double>(freedom);
  const double part = 2 / (9 * n);
  return n * std::pow(1 - part + deviations * std::sqrt(part), 3);
}

Length times(Length length, double factor) {
  return nearest_step(static_cast<double>(length.steps()) * factor);
}

}  // namespace

Readings sum_up(const std::vector<Length>& readings) {
  const auto count = static_cast<std::int64_t>(readings.size());
  Length sum;
  for (const Length reading : readings)
    sum += reading;
  const Length mean = floor_divide(sum * 2 + Length::from_steps(count), count * 2);
  Readings summary{readings.size(), mean, {}};
  if (count < 2) return summary;
  const double exact = static_cast<double>(sum.steps()) / static_cast<double>(count);
  double squares = 0;
  for (const Length reading : readings) {
    const double off = static_cast<double>(reading.steps()) - exact;
    squares += off * off;
  }
  summary.spread = nearest_step(std::sqrt(squares / static_cast<double>(count - 1)));
  return summary;
}

double spread_factor(std::size_t count) {
  const auto freedom = static_cast<double>(count - 1);
  return std::sqrt(freedom / chi_square(kChiSquare10, -kNormal90, count - 1));
}

double least_spread_factor(std::size_t count) {
  const auto freedom = static_cast<double>(count - 1);
  return std::sqrt(freedom / chi_square(kChiSquare90, kNormal90, count - 1));
}

double mean_factor(std::size_t count) {
  return student_95(count - 1) / std::sqrt(static_cast<double>(count));
}

std::optional<Length> mean_within(const Readings& readings) {
  if (!readings.spread) return {};
  return times(*readings.spread, mean_factor(readings.count));
}

std::optional<Length> spread_at_most(const Readings& readings) {
  if (!readings.spread) return {};
  return times(*readings.spread, spread_factor(readings.count));
}

Length joint_spread(Length a, Length b) {
  return nearest_step(std::hypot(static_cast<double>(a.steps()), static_cast<double>(b.steps())));
}

}  // namespace haunch
