#include "dual_bound.h"

#include <algorithm>

#include "cover.h"

namespace haunch::lumber {

namespace {

/// What the prices prove when all values are scaled by `theta`: the values asked for, less what
/// boards in limited number carry beyond their price.
double proven(const Model& model, const std::vector<double>& at_most, double need, double theta) {
  double proven = theta * need;
  for (std::size_t board = 0; board < model.boards.size(); ++board) {
    const BoardKind& kind = model.boards[board];
    if (!kind.limit) continue;
    const double over = theta * at_most[board] - static_cast<double>(kind.price);
    if (over > 0) proven -= static_cast<double>(*kind.limit) * over;
  }
  return proven;
}

}  // namespace

DualBound dual_bound(const Model& model, double need, const std::vector<double>& at_most) {
  // Boards without limit must not carry more than their price: a shade less, for the doubles.
  constexpr double kShade = 1 - 1e-13;
  double most_theta = 1e300;
  std::vector<double> thetas;
  std::vector<Carrier> carriers;
  for (std::size_t board = 0; board < model.boards.size(); ++board) {
    const BoardKind& kind = model.boards[board];
    carriers.push_back({kind.price, at_most[board], kind.limit});
    if (at_most[board] <= 0) continue;
    const double theta = static_cast<double>(kind.price) / at_most[board] * kShade;
    thetas.push_back(theta);
    if (!kind.limit) most_theta = std::min(most_theta, theta);
  }
  double best = 0;
  for (const double theta : thetas) {
    if (theta <= most_theta) best = std::max(best, proven(model, at_most, need, theta));
  }
  DualBound bound;
  const Cover covered = cover(carriers, need);
  bound.possible = covered.possible;
  bound.linear = round_up_to_prices(best, model);
  bound.dual_whole = std::max(bound.linear, covered.whole_boards);
  return bound;
}

}  // namespace haunch::lumber
