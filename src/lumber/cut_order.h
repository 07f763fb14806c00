// From a solution to a plan: the cuts of each board in the order they are made, and the sums.
//
//   Supply          hands out boards and wants, each once
//   cut_up          one board
//   totals_of       where the stock went
#pragma once

#include <vector>

#include "cutting.h"
#include "pattern.h"

namespace haunch::lumber {

/// Hands out the boards of each kind and the wants of each kind in their order, each once.
class Supply {
 public:
  /// The wants of each part kind, in the order in which they are handed out.
  using WantOrder = std::vector<std::vector<std::size_t>>;

  Supply(const Model& model, WantOrder wants);

  struct Board {
    std::size_t stock = 0;
    std::int64_t copy = 0;
  };
  Board next_board(std::size_t board_kind);
  std::size_t next_want(std::size_t part_kind);
  /// Wants not handed out, in order.
  std::vector<std::size_t> wants_left() const;

 private:
  const Model& model_;
  WantOrder wants_;
  std::vector<std::int64_t> boards_out_;
  std::vector<std::size_t> wants_out_;
};

/// The board cut up as the pattern says: trim, then defects, then the pattern's own cuts.
BoardPlan cut_up(const Pattern& pattern, const Model& model, const CuttingOrder& order,
                 Supply& supply);

Totals totals_of(const std::vector<BoardPlan>& boards, const CuttingOrder& order);

}  // namespace haunch::lumber
