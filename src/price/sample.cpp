#include "sample.h"

#include <cmath>

namespace haunch {

Sample sample_of(const std::vector<double>& figures) {
  Sample sample{static_cast<double>(figures.size())};
  if (figures.empty()) return sample;
  for (const double figure : figures)
    sample.mean += figure / sample.number;
  double squares = 0;
  for (const double figure : figures)
    squares += (figure - sample.mean) * (figure - sample.mean);
  if (sample.number > 1) sample.spread = std::sqrt(squares / (sample.number - 1));
  return sample;
}

Sample together(const Sample& a, const Sample& b) {
  Sample sum{a.number + b.number};
  if (sum.number == 0) return sum;
  sum.mean = (a.number * a.mean + b.number * b.mean) / sum.number;
  const double between = a.number * b.number / sum.number * (a.mean - b.mean) * (a.mean - b.mean);
  if (sum.number > 1)
    sum.spread = std::sqrt((a.squares() + b.squares() + between) / (sum.number - 1));
  return sum;
}

}  // namespace haunch
