// The least price of all mixtures of patterns, by column generation.
//
//   Relaxation          what it came to
//   ColumnGeneration    keeps its patterns from one rest of the order to the next
#pragma once

#include <cstdint>
#include <vector>

#include "dual_bound.h"
#include "pattern.h"
#include "pricer.h"
#include "simplex.h"
#include "strip_fill.h"
#include "value_correction.h"

namespace haunch::lumber {

struct Relaxation {
  std::vector<std::size_t> columns;  // of the pool
  std::vector<double> amounts;       // of each of them
  std::vector<double> duals;         // by part kind, >= 0
  double lacking = 0;                // parts that no mixture reaches
  bool finished = false;             // no other column makes it cheaper
};

/// Parts each of which is made in one of several ways: of so many pieces of a kind.
struct Choice {
  struct Way {
    std::size_t kind = 0;
    double pieces = 1;
  };
  double parts = 0;
  std::vector<Way> ways;
};

/// Prices proven against: duals as whole numbers, and what boards carry by them.
struct Proof {
  std::vector<double> values;
  std::vector<double> at_most;
};

/// What the parts are worth at least, however they are made, by values of the kinds.
double least_need(const std::vector<Choice>& choices, const std::vector<double>& values);

class ColumnGeneration {
 public:
  ColumnGeneration(const Model& model, std::uint64_t seed);
  /// For these alone, whichever way they are made.
  ColumnGeneration(const Model& model, std::uint64_t seed, std::vector<Choice> choices);

  void add(const Pattern& pattern);
  const Pattern& pattern(std::size_t column) const { return pool_[column]; }

  /// For the rest. New columns come from filling boards by the duals; when that finds none, and no
  /// more than `exact` times, from the pricer. At most `steps` times in all.
  Relaxation solve(const Rest& rest, int steps, int exact);

  /// Work so far, counted, of about a nanosecond each; beyond the most that is allowed, what is
  /// being solved is brought to an end.
  std::int64_t work() const { return simplex_work_ + pricer_.work() + filler_.work(); }
  void allow_work(std::int64_t most) { most_work_ = most; }

  /// What the board costs, of the dearest.
  double cost(std::size_t board) const { return model_.boards[board].weight / dearest_; }
  const std::vector<Proof>& proofs() const { return proofs_; }
  /// What these parts, or the choices, are worth at least.
  double need(const std::vector<double>& values, const std::vector<int>& parts) const;

 private:
  bool add_new(std::vector<Pattern> patterns, const std::vector<double>& duals,
               const std::vector<double>& board_duals, double least_gain,
               std::vector<std::size_t>& columns);
  bool fill_by(const std::vector<double>& duals, const std::vector<double>& board_duals,
               const Rest& rest, double least_gain, std::vector<std::size_t>& columns);
  bool price_calmly(const std::vector<double>& duals, const std::vector<double>& board_duals,
                    const Rest& rest, int& exact, std::vector<std::size_t>& columns);
  double worth(const Proof& proof, const Rest& rest) const;
  std::vector<double> calmed(const std::vector<double>& duals, double share) const;
  bool price_by(const std::vector<double>& prices, const std::vector<double>& duals,
                const std::vector<double>& board_duals, const Rest& rest,
                std::vector<std::size_t>& columns);

  const Model& model_;
  std::vector<Choice> choices_;  // empty: each kind is wanted as it is
  double dearest_ = 1;
  std::vector<Pattern> pool_;
  std::vector<Proof> proofs_;
  std::vector<double> centre_;   // the prices that prove most so far
  double proven_ = 0;            // and what they prove
  std::size_t first_board_ = 0;  // to be filled next
  std::int64_t simplex_work_ = 0;
  std::int64_t most_work_ = INT64_MAX;
  Pricer pricer_;
  Filler filler_;
  Random random_;
};

}  // namespace haunch::lumber
