#include "rounding.h"

#include <algorithm>
#include <cmath>
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

bool Rounding::dive(const Relaxation& relaxation, int steps) {
  return dive_from(Partial{.rest = rest_of(model_), .solution = {}}, relaxation, steps);
}

/// Some more of the boards used in part; false when none is left to take.
bool Rounding::take_ups(Partial& partial, const Relaxation& relaxation, bool needed) const {
  constexpr std::size_t kAtATime = 30;
  const std::vector<std::size_t> order = by_fraction(relaxation);
  // One more pattern goes up when none was whole; of many, several at a time.
  std::size_t ups = order.size() / kAtATime + (needed ? 1 : 0);
  bool any = false;
  for (auto up = order.begin(); up != order.end() && ups > 0; ++up) {
    const Pattern& pattern = columns_.pattern(relaxation.columns[*up]);
    if (partial.rest.times(pattern) <= 0) continue;
    any = take(partial, pattern, 1) || any;
    --ups;
  }
  return any;
}

bool Rounding::dive_from(Partial partial, Relaxation relaxation, int steps) {
  while (!partial.rest.done()) {
    const bool whole = take_floors(partial, relaxation);
    const bool any = take_ups(partial, relaxation, !whole) || whole;
    if (!finish(partial, relaxation.duals)) return false;
    if (!any) return true;
    relaxation = columns_.solve(partial.rest, steps, 0);
  }
  return true;
}

/// Some boards of the solution: of two drawn the one that loses more.
std::vector<bool> Rounding::draw(const Solution& solution, const std::vector<double>& duals,
                                 Random& random) const {
  constexpr std::size_t kLeast = 5;
  constexpr std::size_t kSpread = 5;
  std::vector<double> losses;
  for (const Pattern& pattern : solution.patterns)
    losses.push_back(columns_.cost(pattern.board) - value_of(pattern, duals));
  const std::size_t boards = losses.size();
  const std::size_t wanted = std::min(boards, kLeast + random.below(kSpread));
  std::vector<bool> drawn(boards, false);
  for (std::size_t count = 0; count < wanted; ++count) {
    const std::size_t one = random.below(boards);
    const std::size_t other = random.below(boards);
    drawn[losses[other] > losses[one] ? other : one] = true;
  }
  return drawn;
}

bool Rounding::dive_again(const Solution& solution, const std::vector<double>& duals, int steps,
                          Random& random) {
  const std::vector<bool> anew = draw(solution, duals, random);
  Partial partial{.rest = rest_of(model_), .solution = {}};
  for (std::size_t board = 0; board < anew.size(); ++board) {
    if (anew[board]) continue;
    partial.rest.take(solution.patterns[board]);
    partial.solution.patterns.push_back(solution.patterns[board]);
  }
  Relaxation relaxation = columns_.solve(partial.rest, steps, 0);
  return dive_from(std::move(partial), std::move(relaxation), steps);
}

}  // namespace haunch::lumber
