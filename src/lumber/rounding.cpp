#include "rounding.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <utility>

namespace haunch::lumber {

namespace {

/// An amount so near a whole number counts as it.
constexpr double kNearly = 1e-4;

double fraction(double amount) {
  return amount + kNearly - std::floor(amount + kNearly);
}

}  // namespace

Rounding::Rounding(const Model& model, ColumnGeneration& columns, Corrector& corrector, Offer offer)
    : model_(model), columns_(columns), corrector_(corrector), offer_(std::move(offer)) {}

/// As often as the rest allows, without what is wanted no more.
bool Rounding::take(Partial& partial, const Pattern& pattern, std::int64_t times) const {
  bool any = false;
  for (; times > 0 && partial.rest.boards[pattern.board] > 0; --times) {
    Pattern taken = pattern;
    drop_beyond(taken, partial.rest.parts);
    if (taken.parts.empty()) break;
    partial.rest.take(taken);
    partial.solution.patterns.push_back(std::move(taken));
    any = true;
  }
  return any;
}

bool Rounding::take_floors(Partial& partial, const Relaxation& relaxation) const {
  bool any = false;
  for (std::size_t index = 0; index < relaxation.columns.size(); ++index) {
    const auto times = static_cast<std::int64_t>(std::floor(relaxation.amounts[index] + kNearly));
    if (times <= 0) continue;
    any = take(partial, columns_.pattern(relaxation.columns[index]), times) || any;
  }
  return any;
}

/// The rest by value correction; the result is offered.
bool Rounding::finish(const Partial& partial, std::vector<double> values) {
  Solution solution = partial.solution;
  Solution rest = corrector_.round(partial.rest, values, FillCare{});
  std::move(rest.patterns.begin(), rest.patterns.end(), std::back_inserter(solution.patterns));
  solution.missing = std::move(rest.missing);
  return offer_(std::move(solution));
}

/// Indices of the relaxation's columns that are used in part, the most used first.
std::vector<std::size_t> Rounding::by_fraction(const Relaxation& relaxation) const {
  std::vector<std::size_t> order;
  for (std::size_t index = 0; index < relaxation.columns.size(); ++index) {
    if (fraction(relaxation.amounts[index]) > 2 * kNearly) order.push_back(index);
  }
  std::stable_sort(order.begin(), order.end(), [&relaxation](std::size_t a, std::size_t b) {
    return fraction(relaxation.amounts[a]) > fraction(relaxation.amounts[b]);
  });
  return order;
}

bool Rounding::round(const Relaxation& relaxation, int most_tries) {
  Partial partial{.rest = rest_of(model_), .solution = {}};
  take_floors(partial, relaxation);
  const std::vector<std::size_t> order = by_fraction(relaxation);
  const auto tries = static_cast<std::size_t>(most_tries);
  const std::size_t stride = std::max<std::size_t>(1, (order.size() + tries - 1) / tries);
  for (std::size_t taken = 0;; ++taken) {
    if (taken % stride == 0 || taken == order.size()) {
      if (!finish(partial, corrector_.values_by_area())) return false;
      if (!finish(partial, relaxation.duals)) return false;
    }
    if (taken == order.size()) return true;
    take(partial, columns_.pattern(relaxation.columns[order[taken]]), 1);
  }
}

bool Rounding::dive(Relaxation relaxation, int steps) {
  Partial partial{.rest = rest_of(model_), .solution = {}};
  while (!partial.rest.done()) {
    bool any = take_floors(partial, relaxation);
    const std::vector<std::size_t> order = by_fraction(relaxation);
    // One more pattern goes up when none was whole; of many, several at a time.
    const std::size_t ups = any ? order.size() / 30 : 1 + order.size() / 30;
    for (std::size_t up = 0; up < std::min(ups, order.size()); ++up)
      any = take(partial, columns_.pattern(relaxation.columns[order[up]]), 1) || any;
    if (!finish(partial, corrector_.values_by_area())) return false;
    if (!finish(partial, relaxation.duals)) return false;
    if (!any) return true;
    relaxation = columns_.solve(partial.rest, steps, 0);
  }
  partial.solution.missing = partial.rest.parts;
  return offer_(std::move(partial.solution));
}

}  // namespace haunch::lumber
