#include "cutting.h"

#include <algorithm>
#include <tuple>
#include <utility>

#include "cut_order.h"
#include "every_way.h"
#include "gather.h"
#include "groups.h"
#include "search.h"
#include "shortage.h"
#include "tidy.h"

namespace haunch::lumber {

namespace {

/// The model of the boards that cost nothing, measured by area.
Model free_boards(const Model& model, Solution& solution) {
  Model free = model;
  std::vector<std::size_t> place(model.boards.size(), 0);
  free.boards.clear();
  for (std::size_t board = 0; board < model.boards.size(); ++board) {
    place[board] = free.boards.size();
    if (model.boards[board].cost == 0) free.boards.push_back(model.boards[board]);
  }
  for (Pattern& pattern : solution.patterns)
    pattern.board = place[pattern.board];
  set_prices(free, Measure::square_mm);
  return free;
}

/// The best plan by money may cost nothing: then it is the wood it uses that counts.
Found found_for(Model& model, const CuttingOrder& order) {
  Found found = find(model, order.effort, order.seed, {});
  const bool free = std::all_of(
      found.solution.patterns.begin(), found.solution.patterns.end(),
      [&model](const Pattern& pattern) { return model.boards[pattern.board].cost == 0; });
  if (order.prefer != Prefer::cost || !free || found.solution.patterns.empty()) return found;
  model = free_boards(model, found.solution);
  Found again = find(model, order.effort, order.seed, std::move(found.solution));
  again.work += found.work;
  return again;
}

void finish_bounds(Bounds& bounds, const Model& model, const Solution& solution) {
  bounds.measure = model.measure;
  std::int64_t dearest = 0;
  for (const Pattern& pattern : solution.patterns) {
    bounds.plan += model.boards[pattern.board].price;
    dearest = std::max(dearest, model.boards[pattern.board].price);
  }
  settle_best(bounds);
  bounds.proven = bounds.plan == bounds.best;
  if (dearest > 0) {
    bounds.boards_above =
        static_cast<double>(bounds.plan - bounds.best) / static_cast<double>(dearest);
  }
}

/// Equal patterns mostly follow each other: each is tidied once.
void tidy_all(std::vector<Pattern>& patterns, const Model& model, const CuttingOrder& order) {
  Pattern before;
  for (std::size_t index = 0; index < patterns.size(); ++index) {
    Pattern& pattern = patterns[index];
    if (index > 0 && pattern == before) {
      pattern = patterns[index - 1];
      continue;
    }
    before = pattern;
    tidy(pattern, model, order);
  }
}

/// Equal boards together, those in the order of the stock that cut most first.
void sort_patterns(std::vector<Pattern>& patterns) {
  std::stable_sort(patterns.begin(), patterns.end(), [](const Pattern& a, const Pattern& b) {
    return std::tie(a.board, b.parts) < std::tie(b.board, a.parts);
  });
}

}  // namespace

Plan plan_cutting(const CuttingOrder& order) {
  Model model = model_of(order);
  Found found = found_for(model, order);
  std::vector<Pattern>& patterns = found.solution.patterns;
  tidy_all(patterns, model, order);
  sort_patterns(patterns);
  Plan plan;
  Supply supply(model, want_order(patterns, model, order));
  for (const Pattern& pattern : patterns)
    plan.boards.push_back(cut_up(pattern, model, order, supply));
  std::stable_sort(plan.boards.begin(), plan.boards.end(),
                   [](const BoardPlan& a, const BoardPlan& b) {
                     return std::tie(a.stock, a.copy) < std::tie(b.stock, b.copy);
                   });
  const std::vector<std::size_t> left = supply.wants_left();
  plan.unplaced = unplaced_of(left, model, order);
  if (!left.empty()) plan.shortage = shortage_of(found.solution, model, found.proven_short);
  plan.split_groups = split_groups(plan.boards, order);
  gather(plan, model, order);
  plan.totals = totals_of(plan.boards, order);
  plan.bounds = found.bounds;
  plan.work = found.work;
  finish_bounds(plan.bounds, model, found.solution);
  const std::vector<std::string> faults = faults_of(plan, order);
  if (!faults.empty()) throw PlanFault("the cutting plan is wrong: " + faults.front());
  return plan;
}

}  // namespace haunch::lumber
