// From mixtures of patterns to whole boards.
//
//   Rounding      by rounding, and by diving
#pragma once

#include <functional>
#include <vector>

#include "column_generation.h"
#include "value_correction.h"

namespace haunch::lumber {

class Rounding {
 public:
  /// `offer` is given every solution; it returns whether to go on.
  using Offer = std::function<bool(Solution)>;

  Rounding(const Model& model, ColumnGeneration& columns, Corrector& corrector, Offer offer);

  /// Whole boards of the mixture, then a growing number of the boards most used in part, then the
  /// rest by value correction. False when there is no need to go on.
  bool round(const Relaxation& relaxation, int most_tries);
  /// One pattern after the other made whole, and the rest relaxed again. False as above.
  bool dive(Relaxation relaxation, int steps);

 private:
  /// A solution in the making.
  struct Partial {
    Rest rest;
    Solution solution;
  };
  bool take(Partial& partial, const Pattern& pattern, std::int64_t times) const;
  bool take_floors(Partial& partial, const Relaxation& relaxation) const;
  bool finish(const Partial& partial, std::vector<double> values);
  std::vector<std::size_t> by_fraction(const Relaxation& relaxation) const;

  const Model& model_;
  ColumnGeneration& columns_;
  Corrector& corrector_;
  Offer offer_;
};

}  // namespace haunch::lumber
