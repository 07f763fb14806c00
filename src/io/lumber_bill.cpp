#include "lumber_bill.h"

#include <algorithm>
#include <optional>

namespace haunch {
namespace {

using lumber::Exact;

constexpr int kMoneyPlaces = 2;
/// Sums of the costs of 100 000 boards are still exact in the doubles of the bounds.
constexpr lumber::Money kMostUnits = 10'000'000'000;

void count_boards(std::map<std::size_t, int>& counts, const MaterialPlan& plan) {
  for (const lumber::BoardPlan& board : plan.plan.boards)
    ++counts[plan.items[board.stock]];
}

std::vector<BillLine> bill_for(const std::map<std::size_t, int>& counts, const StockFile& stock) {
  std::vector<BillLine> bill;
  for (const auto& [index, count] : counts) {
    const StockItem& item = stock.items[index];
    if (item.price) bill.push_back({index, count, cost_of(item).rounded(count, kMoneyPlaces)});
  }
  return bill;
}

bool all_fit(const StockFile& stock, const Exact& unit) {
  return std::all_of(stock.items.begin(), stock.items.end(), [&](const StockItem& item) {
    return cost_of(item).floor_in(unit, kMostUnits).has_value();
  });
}

}  // namespace

std::map<std::size_t, int> boards_cut(const LumberReport& report) {
  std::map<std::size_t, int> counts;
  for (const MaterialPlan& plan : report.plans)
    count_boards(counts, plan);
  return counts;
}

std::vector<BillLine> bill_of(const LumberReport& report) {
  return bill_for(boards_cut(report), report.stock);
}

std::vector<BillLine> bill_of(const MaterialPlan& plan, const StockFile& stock) {
  std::map<std::size_t, int> counts;
  count_boards(counts, plan);
  return bill_for(counts, stock);
}

std::int64_t total_of(const std::vector<BillLine>& bill) {
  std::int64_t total = 0;
  for (const BillLine& line : bill)
    total += line.cost;
  return total;
}

PlansBound as_billed(const PlansBound& bound, const LumberReport& report) {
  PlansBound billed = bound;
  lumber::Bounds& bounds = billed.bounds;
  if (bounds.measure != lumber::Measure::money) return billed;
  const std::int64_t exact = bounds.plan;
  bounds.plan = 0;
  for (const std::size_t plan : bound.plans)
    bounds.plan += total_of(bill_of(report.plans[plan], report.stock));
  // Lines that are rounded down may come to less than the bound: no bound is told above the plan.
  const auto in_hundredths = [&](std::int64_t figure) {
    if (figure == exact) return bounds.plan;
    return std::min(bounds.plan, report.money_unit.floored(figure, kMoneyPlaces));
  };
  bounds.area = in_hundredths(bounds.area);
  bounds.whole_boards = in_hundredths(bounds.whole_boards);
  if (bounds.linear) bounds.linear = in_hundredths(*bounds.linear);
  if (bounds.dual_whole) bounds.dual_whole = in_hundredths(*bounds.dual_whole);
  bounds.best = in_hundredths(bounds.best);
  bounds.proven = bounds.best == bounds.plan;  // to the hundredth
  billed.as_made = in_hundredths(billed.as_made);
  return billed;
}

PlansBound bound_of(const LumberReport& report) {
  PlansBound all;
  lumber::Bounds& sum = all.bounds;
  sum.measure = lumber::Measure::square_mm;
  for (const PlansBound& each : report.bounds)
    if (each.bounds.measure != lumber::Measure::square_mm) sum.measure = each.bounds.measure;
  sum.linear = 0;
  for (const PlansBound& exact : report.bounds) {
    const PlansBound each = as_billed(exact, report);
    const lumber::Bounds& bounds = each.bounds;
    if (bounds.measure != sum.measure) continue;
    all.any_choice = all.any_choice || each.any_choice;
    all.as_made += each.as_made;
    sum.plan += bounds.plan;
    sum.area += bounds.area;
    sum.whole_boards += bounds.whole_boards;
    sum.linear =
        sum.linear && bounds.linear ? std::optional(*sum.linear + *bounds.linear) : std::nullopt;
    sum.best += bounds.best;
    sum.boards_above += bounds.boards_above;
  }
  sum.proven = sum.plan == sum.best;
  return all;
}

Exact money_unit_of(const StockFile& stock) {
  constexpr lumber::Wide kMillion = 1'000'000;
  std::optional<Exact> measure = Exact();
  for (const StockItem& item : stock.items)
    if (measure) measure = common_measure(*measure, cost_of(item));
  if (measure == Exact()) return Exact::of(1);  // nothing costs anything
  if (measure && all_fit(stock, *measure)) return *measure;
  lumber::Wide parts = kMillion;
  while (parts > 1 && !all_fit(stock, Exact::of(1, parts)))
    parts /= 10;
  return Exact::of(1, parts);
}

lumber::Money cost_in(const StockItem& item, const Exact& unit) {
  return cost_of(item).floor_in(unit, kMostUnits).value();
}

}  // namespace haunch
