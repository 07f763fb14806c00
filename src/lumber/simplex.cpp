#include "simplex.h"

#include <algorithm>
#include <cmath>

namespace haunch::lumber {
namespace {

/// A basis with the unit matrix beside it: what makes the one the unit matrix makes the other the
/// inverse.
class WideTable {
 public:
  WideTable(std::size_t rows, std::size_t width)
      : rows_(rows), width_(width), cells_(rows * width, 0.0) {}

  double& at(std::size_t row, std::size_t column) { return cells_[row * width_ + column]; }

  /// Makes `column` that of the unit matrix; false when it depends on those before it.
  bool eliminate(std::size_t column) {
    const std::size_t largest = row_of_largest(column);
    if (std::abs(at(largest, column)) < 1e-12) return false;
    for (std::size_t place = 0; place < width_ && largest != column; ++place)
      std::swap(at(largest, place), at(column, place));
    const double scale = 1 / at(column, column);
    for (std::size_t place = column; place < width_; ++place)
      at(column, place) *= scale;
    for (std::size_t row = 0; row < rows_; ++row)
      if (row != column) take_off(row, column);
    return true;
  }

 private:
  std::size_t row_of_largest(std::size_t column) {
    std::size_t largest = column;
    for (std::size_t row = column + 1; row < rows_; ++row)
      if (std::abs(at(row, column)) > std::abs(at(largest, column))) largest = row;
    return largest;
  }

  void take_off(std::size_t row, std::size_t column) {
    const double factor = at(row, column);
    for (std::size_t place = column; factor != 0 && place < width_; ++place)
      at(row, place) -= factor * at(column, place);
  }

  std::size_t rows_, width_;
  std::vector<double> cells_;
};

constexpr double kTiny = 1e-9;

}  // namespace

Simplex::Simplex(std::vector<double> demands, const std::vector<double>& limits,
                 double artificial_cost)
    : rows_(demands.size() + limits.size()),
      demands_(demands.size()),
      artificial_cost_(artificial_cost),
      right_(std::move(demands)),
      basis_(rows_),
      inverse_(rows_ * rows_, 0.0) {
  right_.insert(right_.end(), limits.begin(), limits.end());
  for (std::size_t row = 0; row < rows_; ++row) {
    // A little more on each right side, never the same: so the method cannot go round in circles.
    right_[row] += 1e-7 * static_cast<double>(row + 1) / static_cast<double>(rows_);
    basis_[row] = (row < demands_ ? kArtificial : kSlack) + row;
    inverse(row, row) = 1;
  }
  basic_ = right_;
}

void Simplex::add_column(double cost, const std::vector<Entry>& entries) {
  costs_.push_back(cost);
  for (const auto& [row, coefficient] : entries)
    cells_.push_back({static_cast<std::uint32_t>(row), static_cast<float>(coefficient)});
  cells_end_.push_back(cells_.size());
}

double Simplex::reduced_cost(std::size_t column, const std::vector<double>& duals) const {
  double reduced = costs_[column];
  for (std::size_t cell = column == 0 ? 0 : cells_end_[column - 1]; cell < cells_end_[column];
       ++cell)
    reduced -= duals[cells_[cell].row] * static_cast<double>(cells_[cell].coefficient);
  return reduced;
}

double Simplex::cost_of(Variable variable) const {
  if (variable >= kArtificial) return artificial_cost_;
  return variable >= kSlack ? 0 : costs_[variable];
}

std::vector<Simplex::Entry> Simplex::entries_of(Variable variable) const {
  if (variable >= kArtificial) return {{variable - kArtificial, 1.0}};
  if (variable < kSlack) {
    std::vector<Entry> entries;
    for (std::size_t cell = variable == 0 ? 0 : cells_end_[variable - 1];
         cell < cells_end_[variable]; ++cell)
      entries.emplace_back(cells_[cell].row, cells_[cell].coefficient);
    return entries;
  }
  const std::size_t row = variable - kSlack;
  return {{row, row < demands_ ? -1.0 : 1.0}};
}

std::vector<double> Simplex::duals() const {
  std::vector<double> duals(rows_, 0.0);
  for (std::size_t row = 0; row < rows_; ++row) {
    const double cost = cost_of(basis_[row]);
    if (cost == 0) continue;
    for (std::size_t column = 0; column < rows_; ++column)
      duals[column] += cost * inverse(row, column);
  }
  return duals;
}

std::vector<double> Simplex::values() const {
  std::vector<double> values(costs_.size(), 0.0);
  for (std::size_t row = 0; row < rows_; ++row) {
    if (basis_[row] < kSlack) values[basis_[row]] = std::max(0.0, basic_[row]);
  }
  return values;
}

double Simplex::lacking() const {
  double lacking = 0;
  for (std::size_t row = 0; row < rows_; ++row) {
    if (basis_[row] >= kArtificial) lacking += std::max(0.0, basic_[row]);
  }
  return lacking;
}

bool Simplex::choose_entering(const std::vector<double>& duals, Variable& entering) const {
  double least = -kTiny;
  const auto consider = [&least, &entering](double reduced, Variable variable) {
    if (reduced >= least) return;
    least = reduced;
    entering = variable;
  };
  for (std::size_t column = 0; column < costs_.size(); ++column)
    consider(reduced_cost(column, duals), column);
  for (std::size_t row = 0; row < rows_; ++row)
    consider(row < demands_ ? duals[row] : -duals[row], kSlack + row);
  return least < -kTiny;
}

/// False when nothing leaves the basis: the step is not to be made.
bool Simplex::pivot(Variable entering) {
  std::vector<double> step(rows_, 0.0);
  const std::vector<Entry> entries = entries_of(entering);
  for (std::size_t row = 0; row < rows_; ++row) {
    for (const auto& [from, coefficient] : entries)
      step[row] += inverse(row, from) * coefficient;
  }
  std::size_t leaving = rows_;
  double least = 0;
  for (std::size_t row = 0; row < rows_; ++row) {
    if (step[row] <= kTiny) continue;
    const double ratio = std::max(0.0, basic_[row]) / step[row];
    if (leaving == rows_ || ratio < least) {
      leaving = row;
      least = ratio;
    }
  }
  if (leaving == rows_) return false;
  const double scale = 1 / step[leaving];
  for (std::size_t column = 0; column < rows_; ++column)
    inverse(leaving, column) *= scale;
  for (std::size_t row = 0; row < rows_; ++row) {
    if (row == leaving || step[row] == 0) continue;
    basic_[row] -= step[row] * least;
    for (std::size_t column = 0; column < rows_; ++column)
      inverse(row, column) -= step[row] * inverse(leaving, column);
  }
  basic_[leaving] = least;
  basis_[leaving] = entering;
  return true;
}

/// The inverse anew from the basis: errors of many pivots add up.
void Simplex::refactor() {
  const auto rows = static_cast<std::int64_t>(rows_);
  work_ += rows * rows * rows / 2;
  WideTable table(rows_, 2 * rows_);
  for (std::size_t column = 0; column < rows_; ++column) {
    for (const auto& [row, coefficient] : entries_of(basis_[column]))
      table.at(row, column) = coefficient;
    table.at(column, rows_ + column) = 1;
  }
  for (std::size_t column = 0; column < rows_; ++column)
    if (!table.eliminate(column)) return;
  for (std::size_t row = 0; row < rows_; ++row) {
    basic_[row] = 0;
    for (std::size_t column = 0; column < rows_; ++column) {
      inverse(row, column) = table.at(row, rows_ + column);
      basic_[row] += inverse(row, column) * right_[column];
    }
  }
}

void Simplex::solve(int pivots) {
  constexpr int kRefactor = 150;
  const auto rows = static_cast<std::int64_t>(rows_);
  for (; pivots > 0; --pivots) {
    work_ += 2 * rows * rows + static_cast<std::int64_t>(cells_.size());
    Variable entering = 0;
    if (!choose_entering(duals(), entering)) return;
    if (!pivot(entering)) return;
    if (++since_refactor_ < kRefactor) continue;
    since_refactor_ = 0;
    refactor();
  }
}

}  // namespace haunch::lumber
