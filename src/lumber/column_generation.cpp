#include "column_generation.h"

#include <algorithm>
#include <cmath>

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

/// The rows of a rest: its parts, then the boards in limited number.
struct Rows {
  std::vector<std::size_t> of_part, of_board;
  std::vector<double> demands, limits;

  Rows(const Rest& rest, const Model& model)
      : of_part(rest.parts.size(), SIZE_MAX), of_board(rest.boards.size(), SIZE_MAX) {
    for (std::size_t kind = 0; kind < rest.parts.size(); ++kind) {
      if (rest.parts[kind] <= 0) continue;
      of_part[kind] = demands.size();
      demands.push_back(rest.parts[kind]);
    }
    for (std::size_t board = 0; board < rest.boards.size(); ++board) {
      if (!model.boards[board].limit) continue;
      of_board[board] = demands.size() + limits.size();
      limits.push_back(static_cast<double>(rest.boards[board]));
    }
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

ColumnGeneration::ColumnGeneration(const Model& model, std::uint64_t seed)
    : model_(model), pricer_(model), filler_(model), random_(seed) {
  dearest_ = 0;
  for (const BoardKind& board : model.boards)
    dearest_ = std::max(dearest_, board.weight);
  double least = 1e300;
  for (std::size_t board = 0; board < model.boards.size(); ++board)
    least = std::min(least, cost(board) / board_area(model.boards[board]));
  for (const PartKind& part : model.parts)
    centre_.push_back(part_area(part) * least);
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

bool ColumnGeneration::fill_by(const std::vector<double>& duals,
                               const std::vector<double>& board_duals, const Rest& rest,
                               double least_gain, std::vector<std::size_t>& columns) {
  std::vector<Pattern> patterns;
  for (std::size_t board = 0; board < model_.boards.size(); ++board) {
    if (rest.boards[board] > 0)
      patterns.push_back(filler_.fill(board, duals, rest.parts, FillCare{}, random_));
  }
  return add_new(std::move(patterns), duals, board_duals, least_gain, columns);
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
  double worth = 0;
  for (std::size_t kind = 0; kind < proof.values.size(); ++kind)
    worth += theta * proof.values[kind] * rest.parts[kind];
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
  const Rows rows(rest, model_);
  Simplex simplex(rows.demands, rows.limits, kArtificialCost);
  // Where the pricer is to come, filling is for the large gains.
  const double least_gain = exact > 0 ? kFillGain : 0;
  Relaxation relaxation;
  for (std::size_t column = 0; column < pool_.size(); ++column) {
    if (within(pool_[column], rest)) relaxation.columns.push_back(column);
  }
  for (; steps > 0; --steps) {
    for (std::size_t column = simplex.columns(); column < relaxation.columns.size(); ++column) {
      const Pattern& pattern = pool_[relaxation.columns[column]];
      simplex.add_column(cost(pattern.board), rows.entries(pattern));
    }
    simplex.solve(kPivots);
    const std::vector<double> duals = simplex.duals();
    relaxation.duals = rows.by_index(rows.of_part, duals);
    for (double& dual : relaxation.duals)
      dual = std::max(0.0, dual);
    const std::vector<double> board_duals = rows.by_index(rows.of_board, duals);
    if (steps == 1 && exact == 0) break;
    const bool priced_only = steps == 1 || (model_.single_row && exact > 0);
    if (!priced_only &&
        fill_by(relaxation.duals, board_duals, rest, least_gain, relaxation.columns)) {
      continue;
    }
    if (!price_calmly(relaxation.duals, board_duals, rest, exact, relaxation.columns)) break;
  }
  relaxation.amounts = simplex.values();
  relaxation.amounts.resize(relaxation.columns.size(), 0.0);
  relaxation.lacking = simplex.lacking();
  return relaxation;
}

}  // namespace haunch::lumber
