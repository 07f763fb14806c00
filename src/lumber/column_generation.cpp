#include "column_generation.h"

#include <algorithm>
#include <cmath>

namespace haunch::lumber {

namespace {

constexpr double kTiny = 1e-7;
constexpr double kArtificialCost = 10;  // times the dearest board
constexpr int kPivots = 3000;
/// Dual prices as whole numbers: one dearest board is 2^34 of them, so that the values of thousands
/// of parts add up exactly in a double.
constexpr double kWhole = 17179869184.0;

bool within(const Pattern& pattern, const Rest& rest) {
  return rest.boards[pattern.board] > 0 &&
         std::all_of(pattern.parts.begin(), pattern.parts.end(),
                     [&rest](const Count& part) { return rest.parts[part.first] > 0; });
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
}

void ColumnGeneration::add(const Pattern& pattern) {
  const bool known = std::any_of(pool_.begin(), pool_.end(), [&pattern](const Pattern& other) {
    return other.board == pattern.board && other.parts == pattern.parts;
  });
  if (!known) pool_.push_back(pattern);
}

bool ColumnGeneration::add_new(std::vector<Pattern> patterns, const std::vector<double>& duals,
                               const std::vector<double>& board_duals,
                               std::vector<std::size_t>& columns) {
  bool any = false;
  for (Pattern& pattern : patterns) {
    if (pattern.parts.empty()) continue;
    const double worth = value_of(pattern, duals) + board_duals[pattern.board];
    if (worth <= cost(pattern.board) + kTiny) continue;
    columns.push_back(pool_.size());
    pool_.push_back(std::move(pattern));
    any = true;
  }
  return any;
}

bool ColumnGeneration::fill_by(const std::vector<double>& duals,
                               const std::vector<double>& board_duals, const Rest& rest,
                               std::vector<std::size_t>& columns) {
  std::vector<Pattern> patterns;
  for (std::size_t board = 0; board < model_.boards.size(); ++board) {
    if (rest.boards[board] > 0)
      patterns.push_back(filler_.fill(board, duals, rest.parts, FillCare{}, random_));
  }
  return add_new(std::move(patterns), duals, board_duals, columns);
}

bool ColumnGeneration::price_by(const std::vector<double>& duals,
                                const std::vector<double>& board_duals, const Rest& rest,
                                std::vector<std::size_t>& columns) {
  Proof proof;
  for (const double dual : duals)
    proof.values.push_back(std::floor(dual * kWhole));
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
  add_new(std::move(limited), duals, board_duals, columns);
  return add_new(std::move(patterns), duals, board_duals, columns);
}

Relaxation ColumnGeneration::solve(const Rest& rest, int steps, int exact) {
  const Rows rows(rest, model_);
  Simplex simplex(rows.demands, rows.limits, kArtificialCost);
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
    if (steps == 1) break;
    if (fill_by(relaxation.duals, board_duals, rest, relaxation.columns)) continue;
    if (exact-- <= 0) break;
    if (!price_by(relaxation.duals, board_duals, rest, relaxation.columns)) break;
  }
  relaxation.amounts = simplex.values();
  relaxation.amounts.resize(relaxation.columns.size(), 0.0);
  relaxation.lacking = simplex.lacking();
  return relaxation;
}

}  // namespace haunch::lumber
