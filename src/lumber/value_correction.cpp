#include "value_correction.h"

#include <algorithm>
#include <cmath>

namespace haunch::lumber {

bool Rest::done() const {
  return std::all_of(parts.begin(), parts.end(), [](int count) { return count <= 0; });
}

void Rest::take(const Pattern& pattern) {
  --boards[pattern.board];
  for (const auto& [kind, count] : pattern.parts)
    parts[kind] -= count;
}

std::int64_t Rest::times(const Pattern& pattern) const {
  std::int64_t times = boards[pattern.board];
  for (const auto& [kind, count] : pattern.parts)
    times = std::min<std::int64_t>(times, parts[kind] / count);
  return times;
}

Rest rest_of(const Model& model) {
  Rest rest;
  for (const PartKind& part : model.parts)
    rest.parts.push_back(static_cast<int>(part.demand()));
  for (const BoardKind& board : model.boards)
    rest.boards.push_back(board.limit.value_or(model.demand()));
  return rest;
}

Corrector::Corrector(const Model& model, std::uint64_t seed)
    : model_(model), filler_(model), random_(seed) {
  constexpr auto kStep = static_cast<double>(Length::kStepsPerMm);
  for (const PartKind& part : model.parts) {
    const double length = static_cast<double>(part.length) / kStep;
    areas_.push_back(model.single_row ? length : length * static_cast<double>(part.width) / kStep);
  }
}

std::vector<double> Corrector::values_by_area() const {
  return areas_;
}

/// The boards to try next: all of a few kinds; of many, some drawn.
std::vector<std::size_t> Corrector::candidates(const Rest& rest) {
  constexpr std::size_t kMost = 8;
  std::vector<std::size_t> boards;
  for (std::size_t board = 0; board < rest.boards.size(); ++board) {
    if (rest.boards[board] > 0) boards.push_back(board);
  }
  if (boards.size() <= kMost) return boards;
  // Boards in hand, then the cheapest for their area, are the likeliest.
  std::stable_sort(boards.begin(), boards.end(), [this](std::size_t a, std::size_t b) {
    return model_.boards[a].weight * model_.boards[b].clear_area() <
           model_.boards[b].weight * model_.boards[a].clear_area();
  });
  for (std::size_t place = kMost / 2; place < kMost; ++place)
    std::swap(boards[place], boards[place + random_.below(boards.size() - place)]);
  boards.resize(kMost);
  return boards;
}

Pattern Corrector::next_board(const Rest& rest, const std::vector<double>& values,
                              const FillCare& care) {
  Pattern best;
  double best_ratio = 0;
  const auto consider = [&](std::size_t board) {
    Pattern pattern = filler_.fill(board, values, rest.parts, care, random_);
    ++fills_;
    const double ratio = value_of(pattern, values) / model_.boards[board].weight;
    if (ratio > best_ratio) {
      best_ratio = ratio;
      best = std::move(pattern);
    }
  };
  for (const std::size_t board : candidates(rest))
    consider(board);
  if (!best.parts.empty()) return best;
  for (std::size_t board = 0; board < rest.boards.size(); ++board) {
    if (rest.boards[board] > 0) consider(board);
  }
  return best;
}

void Corrector::correct(std::vector<double>& values, const Pattern& pattern, std::int64_t times) {
  // Large parts are worth a little more than their area: they are the harder to place.
  constexpr double kPower = 1.02;
  double used = 0;
  double worth = 0;
  for (const auto& [kind, count] : pattern.parts) {
    used += areas_[kind] * count;
    worth += std::pow(areas_[kind], kPower) * count;
  }
  const BoardKind& board = model_.boards[pattern.board];
  // The board's room in the measure of areas_, so that values stay near areas.
  constexpr auto kStep = static_cast<double>(Length::kStepsPerMm);
  const double room = model_.single_row
                          ? board.clear_area() / static_cast<double>(board.clear_width) / kStep
                          : board.clear_area() / kStep / kStep;
  const double dearness = room / used;
  for (const auto& [kind, count] : pattern.parts) {
    const auto demand = static_cast<double>(model_.parts[kind].demand());
    const double share = std::min(1.0, count * static_cast<double>(times) / demand);
    const double weight = 0.5 * share * (0.6 + 0.8 * random_.share());
    const double fresh = dearness * std::pow(areas_[kind], kPower) * used / worth;
    values[kind] = (1 - weight) * values[kind] + weight * fresh;
  }
}

Solution Corrector::round(Rest rest, std::vector<double>& values, const FillCare& care) {
  Solution solution;
  while (!rest.done()) {
    const Pattern pattern = next_board(rest, values, care);
    if (pattern.parts.empty()) break;
    // Great numbers go faster with a good pattern used again, and leave room to do better at the
    // end.
    const std::int64_t times = std::max<std::int64_t>(1, rest.times(pattern) / 2);
    for (std::int64_t time = 0; time < times; ++time) {
      rest.take(pattern);
      solution.patterns.push_back(pattern);
    }
    correct(values, pattern, times);
  }
  solution.missing = rest.parts;
  return solution;
}

}  // namespace haunch::lumber
