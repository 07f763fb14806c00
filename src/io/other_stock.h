// From which other stock the parts of plans could come: what is worth a trial, and in which order.
#pragma once

#include <vector>

#include "lumber_bounds.h"
#include "lumber_report.h"

namespace haunch {

/// Parts that go over together: to stock of one thickness, each into so many strips more than the
/// fewest there.
struct StockMove {
  std::vector<std::size_t> parts;
  lumber::StockThickness to;
  std::size_t more_strips = 0;
  bool cheaper = false;  // its boards for sale cost less for their area than those they come from
};

/// The way of each part; past the end of its ways where it has none.
using ChosenWays = std::vector<std::size_t>;

/// Moves for plans that `dear` names: all parts of a wood first, then those of a plan, those on
/// boards that are bought, panels and what is none; and if not `whole_plans_only` equal parts, the
/// parts of a board and single ones.
std::vector<StockMove> stock_moves(const LumberReport& report,
                                   const std::vector<std::vector<LumberWay>>& ways,
                                   const std::vector<std::size_t>& dear, bool whole_plans_only);

/// What is chosen after a move. Parts that have no such way, or only of more layers, stay; so do
/// those that would go over to thicker stock, if not `thicker_too`.
ChosenWays after_move(const StockMove& move, const std::vector<std::vector<LumberWay>>& ways,
                      ChosenWays chosen, bool thicker_too);

}  // namespace haunch
