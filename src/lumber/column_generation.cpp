#include "column_generation.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

#include "cover.h"

namespace haunch::lumber {

namespace {

constexpr double kTiny = 1e-7;
constexpr double kArtificialCost = 10;  // times the dearest board
constexpr int kPivots = 3000;
/// Filling boards finds columns quickly, but the small gains are the pricer's to find.
constexpr double kFillGain = 0.1;
/// How near to the best prices so far columns are sought.
constexpr double kCalm = 0.6;
/// Dual prices as whole numbers: one dearest board is 2^34 of them, so that the values of thousands
/// of parts add up exactly in a double.
constexpr double kWhole = 17179869184.0;

bool within(const Pattern& pattern, const Rest& rest) {
  return rest.times(pattern) > 0;
}

/// The rows of a rest: its parts, choices, then the boards in limited number.
struct Rows {
  std::vector<std::size_t> of_part, of_board;
  std::vector<double> demands, limits;
  std::vector<std::vector<Simplex::Entry>> ways;  // a column each that costs nothing

  Rows(const Rest& rest, const Model& model, const std::vector<Choice>& choices)
      : of_part(rest.parts.size(), SIZE_MAX), of_board(rest.boards.size(), SIZE_MAX) {
    for (std::size_t kind = 0; kind < rest.parts.size(); ++kind) {
      if (rest.parts[kind] <= 0) continue;
      of_part[kind] = demands.size();
      demands.push_back(choices.empty() ? rest.parts[kind] : 0);
    }
    for (const Choice& choice : choices)
      add(choice);
    for (std::size_t board = 0; board < rest.boards.size(); ++board) {
      if (!model.boards[board].limit) continue;
      of_board[board] = demands.size() + limits.size();
      limits.push_back(static_cast<double>(rest.boards[board]));
    }
  }

  /// The part is made at all; and each way of making it uses up pieces. One way needs no row.
  void add(const Choice& choice) {
    if (choice.ways.size() == 1) {
      const Choice::Way& way = choice.ways.front();
      demands[of_part[way.kind]] += choice.parts * way.pieces;
      return;
    }
    for (const Choice::Way& way : choice.ways)
      ways.push_back({{demands.size(), 1.0}, {of_part[way.kind], -way.pieces}});
    demands.push_back(choice.parts);
  }

  std::vector<Simplex::Entry> entries(const Pattern& pattern) const {
    std::vector<Simplex::Entry> entries;
    for (const auto& [kind, count] : pattern.parts) {
      if (of_part[kind] != SIZE_MAX) entries.emplace_back(of_part[kind], count);
    }
    if (of_board[pattern.board] != SIZE_MAX) entries.emplace_back(of_board[pattern.board], 1.0);
    return entries;
  }

  std::vector<double> by_index(const std::vector<std::size_t>& rows,
                               const std::vector<double>& duals) const {
    std::vector<double> values(rows.size(), 0.0);
    for (std::size_t index = 0; index < rows.size(); ++index) {
      if (rows[index] != SIZE_MAX) values[index] = duals[rows[index]];
    }
    return values;
  }
};

}  // namespace

double least_need(const std::vector<Choice>& choices, const std::vector<double>& values) {
  double need = 0;
  for (const Choice& choice : choices) {
    double least = 1e300;
    for (const Choice::Way& way : choice.ways)
      least = std::min(least, way.pieces * values[way.kind]);
    need += choice.parts * least;
  }
  return need;
}

ColumnGeneration::ColumnGeneration(const Model& model, std::uint64_t seed)
    : ColumnGeneration(model, seed, {}) {}

ColumnGeneration::ColumnGeneration(const Model& model, std::uint64_t seed,
                                   std::vector<Choice> choices)
    : model_(model), choices_(std::move(choices)), pricer_(model), filler_(model), random_(seed) {
  dearest_ = 0;
  for (const BoardKind& board : model.boards)
    dearest_ = std::max(dearest_, board.weight);
  std::map<std::size_t, double> least;  // cost for its area, by thickness
  for (std::size_t board = 0; board < model.boards.size(); ++board) {
    const BoardKind& kind = model.boards[board];
    const double dear = cost(board) / board_area(kind);
    const auto [known, is_new] = least.try_emplace(kind.thickness, dear);
    if (!is_new) known->second = std::min(known->second, dear);
  }
  for (const PartKind& part : model.parts)
    centre_.push_back(part_area(part) * least[part.thickness]);
}

double ColumnGeneration::need(const std::vector<double>& values,
                              const std::vector<int>& parts) const {
  if (!choices_.empty()) return least_need(choices_, values);
  double need = 0;
  for (std::size_t kind = 0; kind < values.size(); ++kind)
    need += values[kind] * parts[kind];
  return need;
}

void ColumnGeneration::add(const Pattern& pattern) {
  const bool known = std::any_of(pool_.begin(), pool_.end(), [&pattern](const Pattern& other) {
    return other.board == pattern.board && other.parts == pattern.parts;
  });
  if (!known) pool_.push_back(pattern);
}

bool ColumnGeneration::add_new(std::vector<Pattern> patterns, const std::vector<double>& duals,
                               const std::vector<double>& board_duals, double least_gain,
                               std::vector<std::size_t>& columns) {
  bool any = false;
  for (Pattern& pattern : patterns) {
    if (pattern.parts.empty()) continue;
    const double worth = value_of(pattern, duals) + board_duals[pattern.board];
    if (worth <= cost(pattern.board) * (1 + least_gain) + kTiny) continue;
    columns.push_back(pool_.size());
    pool_.push_back(std::move(pattern));
    any = true;
  }
  return any;
}

/// Of many boards some at a time, until one gives a column.
bool ColumnGeneration::fill_by(const std::vector<double>& duals,
                               const std::vector<double>& board_duals, const Rest& rest,
                               double least_gain, std::vector<std::size_t>& columns) {
  constexpr std::size_t kAtATime = 8;
  const std::size_t boards = model_.boards.size();
  if (boards <= kAtATime) first_board_ = 0;
  for (std::size_t tried = 0; tried < boards;) {
    std::vector<Pattern> patterns;
    for (std::size_t count = 0; count < kAtATime && tried < boards; ++count, ++tried) {
      const std::size_t board = first_board_++ % boards;
      if (rest.boards[board] > 0)
        patterns.push_back(filler_.fill(board, duals, rest.parts, FillCare{}, random_));
    }
    if (add_new(std::move(patterns), duals, board_duals, least_gain, columns)) return true;
  }
  return false;
}

bool ColumnGeneration::price_by(const std::vector<double>& prices, const std::vector<double>& duals,
                                const std::vector<double>& board_duals, const Rest& rest,
                                std::vector<std::size_t>& columns) {
  Proof proof;
  for (const double price : prices)
    proof.values.push_back(std::floor(price * kWhole));
  std::vector<Pattern> patterns;
  std::vector<Pattern> limited;
  for (Pricer::Priced& priced : pricer_.price(proof.values, rest.parts)) {
    proof.at_most.push_back(priced.at_most);
    for (Pattern& pattern : priced.patterns) {
      limited.push_back(pattern);
      drop_beyond(limited.back(), rest.parts);
      patterns.push_back(std::move(pattern));
    }
  }
  proofs_.push_back(std::move(proof));
  std::erase_if(patterns, [&rest](const Pattern& p) { return rest.boards[p.board] <= 0; });
  std::erase_if(limited, [&rest](const Pattern& p) { return rest.boards[p.board] <= 0; });
  add_new(std::move(limited), duals, board_duals, 0, columns);
  return add_new(std::move(patterns), duals, board_duals, 0, columns);
}

/// What the proof proves of the rest, in dearest boards.
double ColumnGeneration::worth(const Proof& proof, const Rest& rest) const {
  double theta = 1;
  for (std::size_t board = 0; board < proof.at_most.size(); ++board) {
    if (!model_.boards[board].limit && proof.at_most[board] > 0)
      theta = std::min(theta, cost(board) * kWhole / proof.at_most[board]);
  }
  double worth = theta * need(proof.values, rest.parts);
  for (std::size_t board = 0; board < proof.at_most.size(); ++board) {
    if (!model_.boards[board].limit) continue;
    const double over = theta * proof.at_most[board] - cost(board) * kWhole;
    if (over > 0) worth -= over * static_cast<double>(rest.boards[board]);
  }
  return worth / kWhole;
}

std::vector<double> ColumnGeneration::calmed(const std::vector<double>& duals, double share) const {
  std::vector<double> calm(duals.size());
  for (std::size_t kind = 0; kind < duals.size(); ++kind)
    calm[kind] = share * centre_[kind] + (1 - share) * duals[kind];
  return calm;
}

/// Duals of the first steps leap about: columns are sought at prices that keep near the best so
/// far, and only when that finds none at the duals themselves.
bool ColumnGeneration::price_calmly(const std::vector<double>& duals,
                                    const std::vector<double>& board_duals, const Rest& rest,
                                    int& exact, std::vector<std::size_t>& columns) {
  for (const double share : {kCalm, 0.0}) {
    if (exact-- <= 0) return false;
    const std::vector<double> prices = calmed(duals, share);
    const bool any = price_by(prices, duals, board_duals, rest, columns);
    const double proven = worth(proofs_.back(), rest);
    if (proven > proven_) {
      proven_ = proven;
      centre_ = prices;
    }
    if (any) return true;
  }
  return false;
}

Relaxation ColumnGeneration::solve(const Rest& rest, int steps, int exact) {
  const Rows rows(rest, model_, choices_);
  Simplex simplex(rows.demands, rows.limits, kArtificialCost);
  for (const std::vector<Simplex::Entry>& way : rows.ways)
    simplex.add_column(0, way);
  // Where the pricer is to come, filling is for the large gains.
  const double least_gain = exact > 0 ? kFillGain : 0;
  Relaxation relaxation;
  for (std::size_t column = 0; column < pool_.size(); ++column) {
    if (within(pool_[column], rest)) relaxation.columns.push_back(column);
  }
  for (; steps > 0; --steps) {
    for (std::size_t column = simplex.columns() - rows.ways.size();
         column < relaxation.columns.size(); ++column) {
      const Pattern& pattern = pool_[relaxation.columns[column]];
      simplex.add_column(cost(pattern.board), rows.entries(pattern));
    }
    const std::int64_t before = simplex.work();
    simplex.solve(kPivots);
    simplex_work_ += simplex.work() - before;
    const std::vector<double> duals = simplex.duals();
    relaxation.duals = rows.by_index(rows.of_part, duals);
    for (double& dual : relaxation.duals)
      dual = std::max(0.0, dual);
    const std::vector<double> board_duals = rows.by_index(rows.of_board, duals);
    // At the end one proof more, where there is none that is late enough.
    if (work() > most_work_) steps = 1;
    if (steps == 1 && exact <= 0) break;
    const bool priced_only = steps == 1 || (model_.single_row && exact > 0);
    if (!priced_only &&
        fill_by(relaxation.duals, board_duals, rest, least_gain, relaxation.columns)) {
      continue;
    }
    if (!price_calmly(relaxation.duals, board_duals, rest, exact, relaxation.columns)) {
      relaxation.finished = exact >= 0;
      break;
    }
  }
  relaxation.amounts = simplex.values();
  relaxation.amounts.erase(
      relaxation.amounts.begin(),
      relaxation.amounts.begin() + static_cast<std::ptrdiff_t>(rows.ways.size()));
  relaxation.amounts.resize(relaxation.columns.size(), 0.0);
  relaxation.lacking = simplex.lacking();
  return relaxation;
}

}  // namespace haunch::lumber
