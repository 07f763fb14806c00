#include "student.h"

#include <cmath>
#include <numbers>

namespace haunch {
namespace {

/// The share between -t and t: the finite series for whole degrees of freedom (Abramowitz and
/// Stegun, Handbook of Mathematical Functions, 26.7.3 and 26.7.4).
double share_within(double t, int degrees) {
  const double angle = std::atan(t / std::sqrt(static_cast<double>(degrees)));
  const double cosine = std::cos(angle);
  const bool odd = degrees % 2 != 0;
  double term = odd ? cosine : 1;
  double sum = degrees == 1 ? 0 : term;
  for (int k = odd ? 3 : 2; k < degrees; k += 2) {
    term *= cosine * cosine * (k - 1) / k;
    sum += term;
  }
  return odd ? (angle + std::sin(angle) * sum) * 2 / std::numbers::pi : std::sin(angle) * sum;
}

}  // namespace

double student_t(double share, int degrees) {
  double low = 0;
  double high = 1;
  while (share_within(high, degrees) < share)
    high *= 2;
  for (int halving = 0; halving < 60; ++halving) {
    const double middle = (low + high) / 2;
    (share_within(middle, degrees) < share ? low : high) = middle;
  }
  return high;
}

}  // namespace haunch
