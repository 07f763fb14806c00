#include "shares.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace haunch {
namespace {

/// What is nearer to the next hundredth is it: weights come out of sums, a little off.
constexpr double kAlike = 1e-9;

double part_of(double whole, const std::vector<double>& weights, double sum, std::size_t number) {
  return sum > 0 ? whole * weights[number] / sum : whole / static_cast<double>(weights.size());
}

}  // namespace

std::vector<Money> shares_of(Money whole, const std::vector<double>& weights) {
  const double sum = std::accumulate(weights.begin(), weights.end(), 0.0);
  std::vector<Money> shares;
  std::vector<std::int64_t> lost;  // in parts of kAlike, so that equal ones are
  Money left = whole;
  for (std::size_t i = 0; i < weights.size(); ++i) {
    const double exact = part_of(static_cast<double>(whole.hundredths), weights, sum, i);
    const double down = std::floor(exact + kAlike);
    shares.push_back({static_cast<std::int64_t>(down)});
    lost.push_back(std::llround((exact - down) / kAlike));
    left = left - shares.back();
  }
  std::vector<std::size_t> order(weights.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return lost[a] > lost[b]; });
  for (std::size_t i = 0; left.hundredths > 0; i = (i + 1) % order.size()) {
    shares[order[i]] += {1};
    left = left - Money{1};
  }
  return shares;
}

}  // namespace haunch
