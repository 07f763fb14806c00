// Time that hands spend on work, exact: sums of it add up as they are printed.
#pragma once

#include <compare>
#include <cstdint>
#include <string>

namespace haunch {

/// Minutes in millionths: what minutes of three places come to, times a quantity of three places,
/// so that nothing of it is ever rounded. Up to 9 million million minutes.
struct WorkTime {
  std::int64_t millionths = 0;

  static constexpr WorkTime from_minutes_thousandths(std::int64_t thousandths) {
    return {thousandths * 1000};
  }
  /// The nearest thousandth of a minute. Requires `minutes` >= 0.
  static WorkTime from_minutes(double minutes);

  double minutes() const { return static_cast<double>(millionths) / 1'000'000; }
  double hours() const { return minutes() / 60; }

  WorkTime& operator+=(WorkTime more) {
    millionths += more.millionths;
    return *this;
  }
  friend WorkTime operator+(WorkTime a, WorkTime b) { return a += b; }
  friend WorkTime operator-(WorkTime a, WorkTime b) { return {a.millionths - b.millionths}; }
  friend WorkTime operator*(WorkTime a, std::int64_t times) { return {a.millionths * times}; }
  friend auto operator<=>(const WorkTime&, const WorkTime&) = default;
};

/// How much there is to be done, in thousandths: of pieces, metres, square metres.
struct Quantity {
  std::int64_t thousandths = 0;

  static constexpr Quantity of(std::int64_t whole) { return {whole * 1000}; }

  double value() const { return static_cast<double>(thousandths) / 1000; }

  Quantity& operator+=(Quantity more) {
    thousandths += more.thousandths;
    return *this;
  }
  friend Quantity operator*(Quantity a, std::int64_t times) { return {a.thousandths * times}; }
  friend auto operator<=>(const Quantity&, const Quantity&) = default;
};

/// Of time that is whole thousandths of a minute each.
WorkTime time_for(WorkTime each, Quantity quantity);

/// "4.368", "12": every place that there is and no more.
std::string minutes_text(WorkTime time);
std::string quantity_text(Quantity quantity);

}  // namespace haunch
