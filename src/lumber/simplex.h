// A small linear programme, solved by the simplex method with a dense inverse: least cost such that
// each of the first rows reaches its demand and none of the others passes its limit.
//
//   Simplex      columns may be added between solutions
#pragma once

#include <cstddef>
#include <cstdint>
#include <utility>
#include <vector>

namespace haunch::lumber {

class Simplex {
 public:
  using Entry = std::pair<std::size_t, double>;  // row, coefficient

  /// `artificial_cost` is paid for each unit of a demand that no column reaches.
  Simplex(std::vector<double> demands, const std::vector<double>& limits, double artificial_cost);

  void add_column(double cost, const std::vector<Entry>& entries);
  std::size_t columns() const { return costs_.size(); }

  /// To the best over all columns, or until `pivots` are spent.
  void solve(int pivots);

  /// By row: what a unit more of it costs; those of limits are 0 or negative.
  std::vector<double> duals() const;
  /// By column.
  std::vector<double> values() const;
  /// How much of the demands is not reached.
  double lacking() const;

  /// Work so far, counted: about as many multiplications.
  std::int64_t work() const { return work_; }

 private:
  // A variable: a column, then a surplus or slack of each row, then an artificial of each demand.
  using Variable = std::size_t;
  static constexpr Variable kSlack = std::size_t{1} << 40;
  static constexpr Variable kArtificial = std::size_t{1} << 41;

  struct Cell {
    std::uint32_t row = 0;
    float coefficient = 0;
  };

  double cost_of(Variable variable) const;
  double reduced_cost(std::size_t column, const std::vector<double>& duals) const;
  std::vector<Entry> entries_of(Variable variable) const;
  double& inverse(std::size_t row, std::size_t column) { return inverse_[row * rows_ + column]; }
  double inverse(std::size_t row, std::size_t column) const {
    return inverse_[row * rows_ + column];
  }
  bool choose_entering(const std::vector<double>& duals, Variable& entering) const;
  bool pivot(Variable entering);
  void refactor();

  std::size_t rows_, demands_;
  double artificial_cost_;
  std::vector<double> right_;
  std::vector<double> costs_;
  std::vector<Cell> cells_;             // of column after column
  std::vector<std::size_t> cells_end_;  // by column, in cells_
  std::vector<Variable> basis_;
  std::vector<double> inverse_;
  std::vector<double> basic_;  // values of the basis
  int since_refactor_ = 0;
  std::int64_t work_ = 0;
};

}  // namespace haunch::lumber
