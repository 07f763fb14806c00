#include "search.h"

#include <algorithm>
#include <numeric>
#include <utility>

#include "column_generation.h"
#include "cover.h"
#include "every_way.h"
#include "recut.h"
#include "rounding.h"
#include "value_correction.h"

namespace haunch::lumber {

namespace {

/// Keeps the best solution.
class Best {
 public:
  explicit Best(const Model& model) : model_(model) {}

  void offer(Solution solution) {
    const Score score = score_of(solution, model_);
    // Another as good is taken too: changes that gain nothing lead to some that do.
    if (any_ && score > score_) return;
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

std::int64_t best_bound(const Bounds& bounds) {
  return std::max(
      {bounds.area, bounds.whole_boards, bounds.linear.value_or(0), bounds.dual_whole.value_or(0)});
}

/// One search: value correction, then columns, rounding and diving.
class Search {
 public:
  Search(const Model& model, int effort, std::uint64_t seed, std::int64_t most_work)
      : model_(model),
        effort_(effort),
        most_work_(most_work),
        seed_(seed),
        best_(model),
        corrector_(model, seed),
        columns_(model, seed + 1) {}

  void start_from(Solution solution) { best_.offer(std::move(solution)); }

  Found run() {
    correct(kFirstFills * effort_);
    bound_by_area(found_.bounds, model_, best_.solution());
    if (!proven() && small_enough()) by_columns();
    if (!proven() && !small_enough()) {
      if (model_.boards.size() <= kMostKinds) by_groups();
      if (best_.score().missing_area == 0) bound_by_few_sizes();
      recut(last_fills());
    }
    found_.solution = best_.solution();
    bound_by_area(found_.bounds, model_, found_.solution);
    if (small_enough())
      bound_by_duals();
    else if (best_.score().missing_area > 0)
      bound_by_few_sizes();
    found_.work = work();
    return std::move(found_);
  }

 private:
  static constexpr std::size_t kMostKinds = 300;  // that columns are worked for at once
  static constexpr std::int64_t kFirstFills = 400;
  static constexpr std::int64_t kLastFills = 2000;
  static constexpr std::int64_t kRowsFaster = 20;  // than strips
  // Of all work no more goes to the first plans, and to columns before they are rounded.
  static constexpr double kFirstShare = 0.2;
  static constexpr double kColumnsShare = 0.6;

  bool small_enough() const {
    const auto wanted = static_cast<std::size_t>(
        std::count_if(model_.parts.begin(), model_.parts.end(),
                      [](const PartKind& part) { return !part.wants.empty(); }));
    return wanted > 0 && wanted <= kMostKinds && model_.boards.size() <= kMostKinds;
  }

  bool proven() const {
    return best_.score().missing_area == 0 && best_.score().price <= best_bound(found_.bounds);
  }

  /// Returns whether there is need to go on.
  bool offer(Solution solution) {
    best_.offer(std::move(solution));
    return !proven();
  }

  /// Rounds of value correction until so many boards are filled.
  void correct(std::int64_t fills) {
    constexpr int kMostRounds = 1000;
    const std::int64_t end = corrector_.fills() + fills;
    std::vector<double> values = corrector_.values_by_area();
    for (int round = 0; round < kMostRounds * effort_; ++round) {
      if (best_.any() && (corrector_.fills() >= end || proven() || used_up(kFirstShare))) return;
      best_.offer(corrector_.round(rest_of(model_), values, FillCare{}));
    }
  }

  /// Rows are priced quickly, strips slowly.
  int exact_pricings() const { return (model_.single_row ? 200 : 20) * (1 + effort_); }

  /// Large orders are worth more work, and have no columns to begin with.
  std::int64_t last_fills() const {
    constexpr std::int64_t kParts = 600;
    const std::int64_t size = std::clamp<std::int64_t>(model_.demand() / kParts, 1, 12);
    return kLastFills * effort_ * (model_.single_row ? kRowsFaster : size);
  }

  /// Some boards of the best anew, until so many boards are filled.
  void recut(std::int64_t fills) {
    const std::int64_t end = corrector_.fills() + fills;
    Recut recut(model_, corrector_, seed_ + 2);
    const std::vector<double> values = corrector_.values_by_area();
    while (corrector_.fills() < end && !best_.solution().patterns.empty() && !proven() &&
           !used_up(1))
      best_.offer(recut.once(best_.solution(), values));
  }

  void by_columns() {
    for (const Pattern& pattern : best_.solution().patterns)
      columns_.add(pattern);
    columns_.allow_work(static_cast<std::int64_t>(static_cast<double>(most_work_) * kColumnsShare));
    const Relaxation relaxation =
        columns_.solve(rest_of(model_), 200 + 100 * effort_, exact_pricings());
    bound_by_duals();
    if (proven()) return;
    Rounding rounding(model_, columns_, corrector_,
                      [this](Solution solution) { return offer(std::move(solution)); });
    if (rounding.round(relaxation, 3 * effort_)) dive(rounding, relaxation);
  }

  /// Many dives for few parts, that take no time, few for many.
  void dive(Rounding& rounding, const Relaxation& relaxation) {
    constexpr int kSteps = 60;
    constexpr int kStepsAgain = 10;
    const auto parts = static_cast<int>(model_.demand());
    const int dives = std::clamp(1200 / parts, 2, 20) * effort_;
    const int again = std::min(5 * parts, 18'000 / parts) * effort_;
    for (int dive = 0; dive < dives; ++dive)
      if (used_up(1) || !rounding.dive(relaxation, kSteps)) return;
    Random random(seed_ + 3);
    for (int dive = 0; dive < again; ++dive)
      if (used_up(1) ||
          !rounding.dive_again(best_.solution(), relaxation.duals, kStepsAgain, random))
        return;
  }

  /// Too many kinds for columns at once: they are dealt out to groups, large and small to each,
  /// which are planned one after another with what boards are left.
  void by_groups();

  /// The best that the proofs give for the parts that are placed.
  void bound_by_duals() {
    constexpr std::size_t kLast = 6;
    std::vector<int> placed = rest_of(model_).parts;
    for (std::size_t kind = 0; kind < placed.size(); ++kind)
      placed[kind] -= best_.solution().missing[kind];
    const std::vector<Proof>& proofs = columns_.proofs();
    found_.bounds.linear.reset();
    found_.bounds.dual_whole.reset();
    for (std::size_t index = proofs.size() - std::min(kLast, proofs.size()); index < proofs.size();
         ++index) {
      const Proof& proof = proofs[index];
      const DualBound bound =
          dual_bound(model_, columns_.need(proof.values, placed), proof.at_most);
      found_.bounds.linear = std::max(found_.bounds.linear.value_or(0), bound.linear);
      found_.bounds.dual_whole = std::max(found_.bounds.dual_whole.value_or(0), bound.dual_whole);
      const double all = columns_.need(proof.values, rest_of(model_).parts);
      found_.proven_short = found_.proven_short || !dual_bound(model_, all, proof.at_most).possible;
    }
  }

  /// Too many kinds for columns at once: fewer that are no larger, the placed parts alone.
  void bound_by_few_sizes() {
    std::vector<PartWays> parts;
    for (std::size_t kind = 0; kind < model_.parts.size(); ++kind) {
      const PartKind& part = model_.parts[kind];
      parts.push_back({part.demand() - best_.solution().missing[kind],
                       {{.length = part.length, .width = part.width, .turnable = part.turnable}}});
    }
    const Bounds bounds = bound_by_sizes(model_, std::move(parts), effort_);
    found_.bounds.linear = bounds.linear;
    found_.bounds.dual_whole = bounds.dual_whole;
  }

  bool used_up(double share) const {
    return static_cast<double>(work()) > share * static_cast<double>(most_work_);
  }
  std::int64_t work() const { return corrector_.work() + columns_.work() + others_work_; }

  const Model& model_;
  int effort_;
  std::int64_t most_work_;
  std::uint64_t seed_;
  Best best_;
  Corrector corrector_;
  ColumnGeneration columns_;
  Found found_;
  std::int64_t others_work_ = 0;  // of searches for groups
};

std::vector<std::size_t> by_falling_area(const Model& model) {
  std::vector<std::size_t> kinds(model.parts.size());
  std::iota(kinds.begin(), kinds.end(), std::size_t{0});
  std::stable_sort(kinds.begin(), kinds.end(), [&](std::size_t a, std::size_t b) {
    return part_area(model.parts[a]) > part_area(model.parts[b]);
  });
  return kinds;
}

/// The model with the parts of one group only.
Model with_parts_of(const Model& model, const std::vector<std::size_t>& kinds) {
  Model group = model;
  std::vector<bool> chosen(model.parts.size(), false);
  for (const std::size_t kind : kinds)
    chosen[kind] = true;
  for (std::size_t kind = 0; kind < chosen.size(); ++kind)
    if (!chosen[kind]) group.parts[kind].wants.clear();
  return group;
}

void Search::by_groups() {
  const std::vector<std::size_t> kinds = by_falling_area(model_);
  const std::size_t count = (kinds.size() + kMostKinds - 1) / kMostKinds;
  std::vector<std::vector<std::size_t>> groups(count);
  for (std::size_t index = 0; index < kinds.size(); ++index)
    groups[index % count].push_back(kinds[index]);
  Solution all;
  all.missing.assign(model_.parts.size(), 0);
  std::vector<BoardKind> boards = model_.boards;
  for (const auto& group : groups) {
    Model part = with_parts_of(model_, group);
    part.boards = boards;
    const Found its_best =
        Search(part, effort_, seed_, most_work_ / static_cast<std::int64_t>(count)).run();
    Solution its = its_best.solution;
    others_work_ += its_best.work;
    for (std::size_t kind = 0; kind < all.missing.size(); ++kind)
      all.missing[kind] += its.missing[kind];
    for (Pattern& pattern : its.patterns) {
      if (auto& limit = boards[pattern.board].limit) --*limit;
      all.patterns.push_back(std::move(pattern));
    }
  }
  best_.offer(std::move(all));
}

}  // namespace

Found find(const Model& model, int effort, std::uint64_t seed, std::optional<Solution> known) {
  // 300 parts on four kinds of boards take less than that; more kinds of either may take all of it.
  constexpr std::int64_t kMostWork = 1'500'000'000;
  constexpr std::size_t kManyKinds = 300;
  const auto many = static_cast<std::int64_t>(1 + model.parts.size() / kManyKinds);
  Search search(model, effort, seed, kMostWork * many * effort);
  if (known) search.start_from(std::move(*known));
  return search.run();
}

}  // namespace haunch::lumber
