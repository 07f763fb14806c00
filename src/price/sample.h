// Mean and spread of few figures.
#pragma once

#include <vector>

namespace haunch {

/// Mean and standard deviation; of fewer than two figures there is no spread.
struct Sample {
  double number = 0, mean = 0, spread = 0;

  double squares() const { return number > 1 ? (number - 1) * spread * spread : 0; }
};

Sample sample_of(const std::vector<double>& figures);

/// Two samples as one.
Sample together(const Sample& a, const Sample& b);

}  // namespace haunch
