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
  bool dive(const Relaxation& relaxation, int steps);
  /// Some of the solution's boards anew, by diving: those that carry least of the `duals` for their
  /// price are the likeliest. False as above.
  bool dive_again(const Solution& solution, const std::vector<double>& duals, int steps,
                  Random& random);

 private:
  /// A solution in the making.
  struct Partial {
    Rest rest;
    Solution solution;
  };
  bool take(Partial& partial, const Pattern& pattern, std::int64_t times) const;
  bool take_floors(Partial& partial, const Relaxation& relaxation) const;
  bool finish(const Partial& partial, std::vector<double> values);
  bool take_ups(Partial& partial, const Relaxation& relaxation, bool needed) const;
  std::vector<bool> draw(const Solution& solution, const std::vector<double>& duals,
                         Random& random) const;
  bool dive_from(Partial partial, Relaxation relaxation, int steps);
  std::vector<std::size_t> by_fraction(const Relaxation& relaxation) const;

  const Model& model_;
  ColumnGeneration& columns_;
  Corrector& corrector_;
  Offer offer_;
};

}  // namespace haunch::lumber
