// What the wood of a plan costs: line by line as the yard bills it, and how far that can be from
// the best possible.
//
//   bill     boards_cut, bill_of, total_of
//   bounds   as_billed, bound_of
//   search   money_unit_of, cost_in: the money that plans reckon in
#pragma once

#include <cstddef>
#include <cstdint>
#include <map>
#include <vector>

#include "lumber_report.h"

namespace haunch {

/// Boards of one kind that are bought.
struct BillLine {
  std::size_t item = 0;  // of the stock file
  int count = 0;
  std::int64_t cost = 0;  // of all, in hundredths: exact until it is rounded, once
};

/// How many boards of each kind are cut, bought or not: by index into the stock file.
std::map<std::size_t, int> boards_cut(const LumberReport& report);

/// In the order of the stock file.
std::vector<BillLine> bill_of(const LumberReport& report);
std::vector<BillLine> bill_of(const MaterialPlan& plan, const StockFile& stock);

/// The sum of the lines as they are billed.
std::int64_t total_of(const std::vector<BillLine>& bill);

/// A bound with money in hundredths: what the plans come to is their bill, and the bounds, which
/// hold for exact money, are rounded down.
PlansBound as_billed(const PlansBound& bound, const LumberReport& report);

/// All bounds in one measure: money where any plan counts in it (what is in hand costs nothing).
PlansBound bound_of(const LumberReport& report);

/// What the costs of all boards are whole multiples of. Where that is too fine for the search to
/// add up, a power of ten that they are rounded down to: a millionth, unless boards are very dear.
lumber::Exact money_unit_of(const StockFile& stock);

/// The cost of one in `unit`, which is that of its stock file.
lumber::Money cost_in(const StockItem& item, const lumber::Exact& unit);

}  // namespace haunch
