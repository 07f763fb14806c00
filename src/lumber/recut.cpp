#include "recut.h"

#include <algorithm>
#include <iterator>
#include <utility>

namespace haunch::lumber {

Recut::Recut(const Model& model, Corrector& corrector, std::uint64_t seed)
    : model_(model), corrector_(corrector), random_(seed) {}

Solution Recut::once(const Solution& solution, const std::vector<double>& values) {
  constexpr std::size_t kLeast = 2;
  constexpr std::size_t kSpread = 5;
  constexpr double kShake = 0.3;
  constexpr FillCare kCare{.sections = 10, .heights = 10, .row_nodes = 100, .single_nodes = 3000};
  const std::size_t boards = solution.patterns.size();
  const std::size_t taken = std::min(boards, kLeast + random_.below(kSpread));
  std::vector<bool> anew(boards, false);
  for (std::size_t count = 0; count < taken; ++count)
    anew[random_.below(boards)] = true;
  Rest rest = rest_of(model_);
  Solution better;
  for (std::size_t board = 0; board < boards; ++board) {
    if (anew[board]) continue;
    rest.take(solution.patterns[board]);
    better.patterns.push_back(solution.patterns[board]);
  }
  std::vector<double> shaken = values;
  for (double& value : shaken)
    value *= 1 - kShake / 2 + kShake * random_.share();
  Solution fresh = corrector_.round(std::move(rest), shaken, kCare);
  std::move(fresh.patterns.begin(), fresh.patterns.end(), std::back_inserter(better.patterns));
  better.missing = std::move(fresh.missing);
  return better;
}

}  // namespace haunch::lumber
