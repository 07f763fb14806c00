// The pattern of most value for each board, given a value of each part, and no pattern's value
// more than so much: exact, for dual prices.
//
//   Pricer      parts in a row by branch and bound; else strips by tables
#pragma once

#include <memory>
#include <vector>

#include "pattern.h"
#include "strip_tables.h"

namespace haunch::lumber {

class Pricer {
 public:
  explicit Pricer(const Model& model);

  struct Priced {
    std::vector<Pattern> patterns;  // the best found, a few for each view
    double at_most = 0;             // no pattern of the board has more value
  };
  /// By board kind. `values` are whole numbers >= 0; no more than `demand` of a part matters.
  std::vector<Priced> price(const std::vector<double>& values, const std::vector<int>& demand);

  /// Work so far, counted.
  std::int64_t work() const;

 private:
  /// The tables of one view.
  struct Tables {
    StripTables::Boards boards;
    std::unique_ptr<StripTables> bound;
    std::unique_ptr<StripTables> layout;  // empty: as `bound`
    const StripTables& to_cut() const { return layout ? *layout : *bound; }
  };

  void add_tables(View view, StripTables::Boards boards);
  Priced price_row(std::size_t board, const std::vector<double>& values,
                   const std::vector<int>& demand);
  Priced price_strips(std::size_t board) const;
  void add_strips(std::vector<Pattern>& patterns, std::size_t board, const Tables& tables) const;

  const Model& model_;
  std::vector<Tables> tables_;
  std::int64_t row_steps_ = 0;
};

}  // namespace haunch::lumber
