// What several readings of one size say of it, and how far a few of them can be trusted.
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "haunch/length.h"

namespace haunch {

/// One size, read once or several times.
struct Readings {
  std::size_t count = 1;
  Length mean;
  std::optional<Length> spread;  // standard deviation of the sample; a single one has none
};

/// Sums up readings (at least one). The mean is the nearest step.
Readings sum_up(const std::vector<Length>& readings);

/// Nine times in ten the spread of all pieces is at most so many times the spread of `count` (> 1)
/// of them: 3.1 for three, 1.9 for five, 1.5 for ten (chi-square, one-sided).
double spread_factor(std::size_t count);

/// Nine times in ten it is at least so many times that: 0.66 for three, 0.72 for five, 0.78 for ten
/// (chi-square, one-sided).
double least_spread_factor(std::size_t count);

/// Nine times in ten the mean of all pieces is at most so many spreads away from the mean of
/// `count` (> 1) of them: 1.7 for three, 1 for five, 0.6 for ten (Student's t, two-sided).
double mean_factor(std::size_t count);

/// The factor times the spread; nothing where there is no spread.
std::optional<Length> mean_within(const Readings& readings);
std::optional<Length> spread_at_most(const Readings& readings);

/// The spread of the sum or difference of two sizes that vary each by itself.
Length joint_spread(Length a, Length b);

}  // namespace haunch
