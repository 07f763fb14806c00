#include "search.h"

#include <algorithm>
#include <utility>

#include "cover.h"
#include "value_correction.h"

namespace haunch::lumber {

namespace {

/// Keeps the best solution.
class Best {
 public:
  explicit Best(const Model& model) : model_(model) {}

  void offer(Solution solution) {
    const Score score = score_of(solution, model_);
    if (any_ && score >= score_) return;
    any_ = true;
    score_ = score;
    solution_ = std::move(solution);
  }
  bool any() const { return any_; }
  const Score& score() const { return score_; }
  const Solution& solution() const { return solution_; }
  Solution& solution() { return solution_; }

 private:
  const Model& model_;
  bool any_ = false;
  Score score_;
  Solution solution_;
};

/// What the placed parts need by area, or by length where all lie in a row.
void bound_by_area(Bounds& bounds, const Model& model, const Solution& solution) {
  std::vector<Carrier> carriers;
  std::vector<Carrier> by_area;
  for (const BoardKind& board : model.boards) {
    const double value = model.single_row ? row_room(board) : board_area(board);
    carriers.push_back({board.price, value, board.limit});
    by_area.push_back({floor_square_mm(board.area()), value, board.limit});
  }
  double need = 0;
  for (std::size_t kind = 0; kind < model.parts.size(); ++kind) {
    const PartKind& part = model.parts[kind];
    const auto placed = static_cast<double>(part.demand() - solution.missing[kind]);
    need += placed * (model.single_row ? row_need(part) : part_area(part));
  }
  const Cover covered = cover(carriers, need);
  bounds.area = covered.parts_of_boards;
  bounds.whole_boards = covered.whole_boards;
  bounds.least_area_square_mm = cover(by_area, need).parts_of_boards;
}

}  // namespace

Found find(const Model& model, int effort, std::uint64_t seed) {
  constexpr std::int64_t kFills = 400;
  constexpr int kRounds = 60;
  Best best(model);
  Corrector corrector(model, seed);
  std::vector<double> values = corrector.values_by_area();
  for (int round = 0; round < kRounds * effort; ++round) {
    if (round > 0 && corrector.fills() > kFills * effort) break;
    best.offer(corrector.round(rest_of(model), values, FillCare{}));
  }
  Found found;
  found.solution = best.solution();
  bound_by_area(found.bounds, model, found.solution);
  return found;
}

}  // namespace haunch::lumber
