#include "other_stock.h"

#include <algorithm>
#include <limits>
#include <map>
#include <set>
#include <tuple>
#include <utility>

#include "lumber_planner.h"

namespace haunch {
namespace {

using Parts = std::vector<std::size_t>;

Parts parts_of(const MaterialPlan& plan) {
  Parts parts;
  for (const LumberPiece& piece : plan.pieces)
    if (piece.number == 1) parts.push_back(piece.part);
  return parts;
}

Parts parts_on(const MaterialPlan& plan, const lumber::BoardPlan& board) {
  std::set<std::size_t> parts;
  for (const lumber::Cut& cut : board.cuts)
    parts.insert(plan.pieces[cut.want].part);
  return {parts.begin(), parts.end()};
}

Parts parts_bought(const MaterialPlan& plan) {
  std::set<std::size_t> parts;
  for (const lumber::BoardPlan& board : plan.plan.boards) {
    if (!plan.order.stock[board.stock].bought) continue;
    const Parts these = parts_on(plan, board);
    parts.insert(these.begin(), these.end());
  }
  return {parts.begin(), parts.end()};
}

/// Collects sets of parts, each with every stock that one of them could come from.
class StockMoves {
 public:
  StockMoves(const LumberReport& report, const std::vector<std::vector<LumberWay>>& ways)
      : report_(report), ways_(ways) {}

  void of_wood(const MaterialPlan& plan) {
    Parts parts;
    for (const MaterialPlan& other : report_.plans) {
      if (!same_material(other.material, plan.material)) continue;
      const Parts these = parts_of(other);
      parts.insert(parts.end(), these.begin(), these.end());
    }
    add(plan, parts);
  }

  void of_plan(const MaterialPlan& plan) {
    add(plan, parts_of(plan));
    add(plan, parts_bought(plan));
    Parts panels = parts_of(plan);
    const auto others =
        std::stable_partition(panels.begin(), panels.end(),
                              [this](std::size_t part) { return report_.parts[part].is_panel; });
    add(plan, Parts(others, panels.end()));
    panels.erase(others, panels.end());
    add(plan, panels);
  }

  /// Equal parts, then the parts of each board, the last first, then each part by itself.
  void of_some(const MaterialPlan& plan) {
    std::map<std::tuple<Length, Length, Length>, Parts> equal;
    for (const std::size_t part : parts_of(plan)) {
      const lumber::FinishedPart& size = report_.parts[part].finished;
      equal[{size.length + size.horn * 2, size.width, size.thickness}].push_back(part);
    }
    for (auto& [size, parts] : equal)
      add(plan, parts);
    for (auto board = plan.plan.boards.rbegin(); board != plan.plan.boards.rend(); ++board)
      add(plan, parts_on(plan, *board));
    for (const auto& [size, parts] : equal)
      for (const std::size_t part : parts)
        add(plan, {part});
  }

  std::vector<StockMove> take() { return std::move(moves_); }

 private:
  void add(const MaterialPlan& plan, const Parts& parts) {
    constexpr std::size_t kMostMore = 2;
    const double now = price(plan.material, plan.thickness);
    std::vector<std::pair<double, lumber::StockThickness>> all;  // the cheapest first
    for (const lumber::StockThickness& to : stock_for(parts))
      all.push_back({price(plan.material, to), to});
    std::stable_sort(all.begin(), all.end(),
                     [](const auto& a, const auto& b) { return a.first < b.first; });
    for (std::size_t more = 0; more <= kMostMore; ++more)
      for (const auto& [price, to] : all)
        moves_.push_back({parts, to, more, price < now});
  }

  std::vector<lumber::StockThickness> stock_for(const Parts& parts) const {
    std::vector<lumber::StockThickness> all;
    for (const std::size_t part : parts)
      for (const LumberWay& way : ways_[part])
        if (std::find(all.begin(), all.end(), way.thickness) == all.end())
          all.push_back(way.thickness);
    return all;
  }

  /// For a square millimetre of the cheapest board that is for sale in any number.
  double price(const std::string& material, const lumber::StockThickness& thickness) const {
    double least = std::numeric_limits<double>::max();
    for (const StockItem& item : report_.stock.items) {
      if (!item.price || item.count || item.thickness != thickness) continue;
      if (!same_material(item.species, material)) continue;
      const double area = lumber::square_mm(lumber::area_of(item.length, item.width));
      least = std::min(least, static_cast<double>(stock_of(item, report_).cost) / area);
    }
    return least;
  }

  const LumberReport& report_;
  const std::vector<std::vector<LumberWay>>& ways_;
  std::vector<StockMove> moves_;
};

}  // namespace

std::vector<StockMove> stock_moves(const LumberReport& report,
                                   const std::vector<std::vector<LumberWay>>& ways,
                                   const std::vector<std::size_t>& dear, bool whole_plans_only) {
  StockMoves moves(report, ways);
  for (const std::size_t plan : dear)
    moves.of_wood(report.plans[plan]);
  for (const std::size_t plan : dear)
    moves.of_plan(report.plans[plan]);
  for (const std::size_t plan : dear)
    if (!whole_plans_only) moves.of_some(report.plans[plan]);
  return moves.take();
}

ChosenWays after_move(const StockMove& move, const std::vector<std::vector<LumberWay>>& ways,
                      ChosenWays chosen, bool thicker_too) {
  for (const std::size_t part : move.parts) {
    const LumberWay now = ways[part][chosen[part]];
    if (!thicker_too && move.to.thickness > now.thickness.thickness) continue;
    std::size_t more = 0;  // the ways from one stock come by rising number of strips
    for (std::size_t i = 0; i < ways[part].size(); ++i) {
      const LumberWay& way = ways[part][i];
      if (way.thickness != move.to || way.rough.layers > now.rough.layers) continue;
      if (more++ <= move.more_strips) chosen[part] = i;
    }
  }
  return chosen;
}

}  // namespace haunch
