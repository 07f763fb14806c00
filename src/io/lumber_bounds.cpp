#include "lumber_bounds.h"

#include <algorithm>
#include <map>

#include "every_way.h"
#include "lumber_planner.h"

namespace haunch {
namespace {

using lumber::Measure;

/// The stock of one material, by thickness; parts that may be made from more than one tie
/// thicknesses together, so that they have one bound.
class Racks {
 public:
  explicit Racks(const LumberReport& report) : report_(report) {}

  std::size_t of(const std::string& material, const lumber::StockThickness& thickness) {
    const std::size_t wood = wood_of(material);
    for (std::size_t rack = 0; rack < racks_.size(); ++rack)
      if (racks_[rack].wood == wood && racks_[rack].thickness == thickness) return rack;
    racks_.push_back({wood, thickness, {}});
    tied_to_.push_back(tied_to_.size());
    for (const StockItem& item : report_.stock.items)
      if (item.thickness == thickness && wood_of(item.species) == wood)
        racks_.back().stock.push_back(stock_of(item, report_));
    return racks_.size() - 1;
  }

  void tie(std::size_t a, std::size_t b) { tied_to_[first(a)] = first(b); }

  /// The one that stands for all that are tied together.
  std::size_t first(std::size_t rack) const {
    while (tied_to_[rack] != rack)
      rack = tied_to_[rack];
    return rack;
  }

  std::size_t size() const { return racks_.size(); }
  const std::vector<lumber::Stock>& stock(std::size_t rack) const { return racks_[rack].stock; }

 private:
  struct Rack {
    std::size_t wood = 0;
    lumber::StockThickness thickness;
    std::vector<lumber::Stock> stock;
  };

  /// Names of one wood have one number.
  std::size_t wood_of(const std::string& material) {
    const auto known = woods_.find(material);
    if (known != woods_.end()) return known->second;
    std::size_t wood = woods_.size();
    for (const auto& [name, number] : woods_)
      if (same_material(name, material)) wood = number;
    return woods_[material] = wood;
  }

  const LumberReport& report_;
  std::map<std::string, std::size_t> woods_;
  std::vector<Rack> racks_;
  std::vector<std::size_t> tied_to_;
};

std::vector<bool> placed_parts(const LumberReport& report) {
  std::vector<bool> placed(report.parts.size(), false);
  for (const MaterialPlan& plan : report.plans)
    for (const lumber::BoardPlan& board : plan.plan.boards)
      for (const lumber::Cut& cut : board.cuts)
        placed[plan.pieces[cut.want].part] = true;
  return placed;
}

std::int64_t price_of(const lumber::Stock& stock, Measure measure) {
  if (measure == Measure::money) return stock.bought ? stock.cost : 0;
  if (measure == Measure::boards) return 1;
  return std::max<std::int64_t>(
      1, lumber::floor_square_mm(lumber::area_of(stock.length, stock.width)));
}

/// Bounds group by group of plans that parts could go over between.
class Bounding {
 public:
  Bounding(LumberReport& report, const std::vector<std::vector<LumberWay>>& ways,
           const LumberWishes& wishes)
      : report_(report), wishes_(wishes), racks_(report) {
    const std::vector<bool> placed = placed_parts(report);
    std::vector<std::vector<lumber::Way>> ways_of(report.parts.size());
    for (std::size_t part = 0; part < ways.size(); ++part)
      if (placed[part]) ways_of[part] = ways_in_racks(part, ways[part]);
    for (const std::vector<lumber::Way>& each : ways_of)
      if (!each.empty()) ++alike_[racks_.first(each.front().thickness)][each];
  }

  void run() {
    report_.bounds.clear();
    std::map<std::size_t, std::vector<std::size_t>> groups;  // of plans, by their racks' first
    for (std::size_t plan = 0; plan < report_.plans.size(); ++plan) {
      const MaterialPlan& each = report_.plans[plan];
      if (each.plan.boards.empty()) continue;
      groups[racks_.first(racks_.of(each.material, each.thickness))].push_back(plan);
    }
    for (const auto& [rack, plans] : groups)
      report_.bounds.push_back(bound_of(rack, plans));
    std::sort(report_.bounds.begin(), report_.bounds.end(),
              [](const PlansBound& a, const PlansBound& b) { return a.plans < b.plans; });
  }

 private:
  std::vector<lumber::Way> ways_in_racks(std::size_t part, const std::vector<LumberWay>& ways) {
    std::vector<lumber::Way> all;
    const int most_layers = std::max(layers_that_do(part, ways), report_.rough[part]->layers);
    for (const LumberWay& way : ways) {
      if (way.rough.layers > most_layers) break;
      const std::size_t rack = racks_.of(report_.parts[part].material, way.thickness);
      all.push_back(
          {rack, way.rough.length, way.rough.width, static_cast<std::int64_t>(way.rough.pieces())});
      racks_.tie(rack, all.front().thickness);
    }
    return all;
  }

  /// Ways come by rising number of layers, and more are glued only where stock for fewer lacks; it
  /// never does where it is for sale in any number.
  int layers_that_do(std::size_t part, const std::vector<LumberWay>& ways) {
    const lumber::StockThickness* last = nullptr;
    for (const LumberWay& way : ways) {
      // Of the ways from one thickness the planner begins with the first.
      if (last != nullptr && *last == way.thickness) continue;
      last = &way.thickness;
      const auto& stock = racks_.stock(racks_.of(report_.parts[part].material, way.thickness));
      if (std::any_of(stock.begin(), stock.end(),
                      [&way](const lumber::Stock& it) { return never_lacks(it, way.rough); }))
        return way.rough.layers;
    }
    return ways.back().rough.layers;
  }

  static bool never_lacks(const lumber::Stock& stock, const RoughPart& rough) {
    return !stock.count && stock.defects.empty() &&
           rough.length <= stock.length - stock.end_trim * 2 &&
           rough.width <= stock.width - stock.edge_trim * 2;
  }

  /// What the plans are measured in: by cost, those that buy nothing by the stock they use.
  Measure measure_of(const std::vector<std::size_t>& plans) const {
    if (wishes_.prefer == lumber::Prefer::boards) return Measure::boards;
    const bool buys = std::any_of(plans.begin(), plans.end(), [this](std::size_t plan) {
      return report_.plans[plan].plan.totals.cost > 0;
    });
    return wishes_.prefer == lumber::Prefer::cost && buys ? Measure::money : Measure::square_mm;
  }

  PlansBound bound_of(std::size_t rack, const std::vector<std::size_t>& plans) {
    PlansBound made;
    made.plans = plans;
    const Measure measure = measure_of(plans);
    const auto& alike = alike_[rack];
    made.any_choice = std::any_of(alike.begin(), alike.end(),
                                  [](const auto& each) { return each.first.size() > 1; });
    made.bounds = made.any_choice ? lumber::bounds_of_every_way(order_of(rack, measure))
                                  : report_.plans[plans.front()].plan.bounds;
    made.bounds.measure = measure;
    measure_up(made);
    return made;
  }

  lumber::WaysOrder order_of(std::size_t rack, Measure measure) {
    lumber::WaysOrder order;
    order.stock.resize(racks_.size());
    for (std::size_t each = 0; each < racks_.size(); ++each)
      if (racks_.first(each) == rack) order.stock[each] = racks_.stock(each);
    // By cost a plan that buys nothing is worse than none that does.
    if (wishes_.prefer == lumber::Prefer::cost && measure == Measure::square_mm)
      for (std::vector<lumber::Stock>& stock : order.stock)
        std::erase_if(stock,
                      [](const lumber::Stock& it) { return price_of(it, Measure::money) > 0; });
    for (const auto& [ways, parts] : alike_[rack])
      order.parts.push_back({parts, ways});
    order.saw.kerf = report_.stock.sawing.kerf;
    order.stages = wishes_.stages;
    order.measure = measure;
    order.effort = wishes_.effort;
    return order;
  }

  /// What the plans come to beside their bounds.
  void measure_up(PlansBound& made) const {
    lumber::Bounds& bounds = made.bounds;
    bounds.plan = 0;
    std::int64_t dearest = 0;
    for (const std::size_t index : made.plans) {
      const MaterialPlan& plan = report_.plans[index];
      if (plan.plan.bounds.measure == bounds.measure) made.as_made += plan.plan.bounds.best;
      for (const lumber::BoardPlan& board : plan.plan.boards) {
        const std::int64_t price = price_of(plan.order.stock[board.stock], bounds.measure);
        bounds.plan += price;
        dearest = std::max(dearest, price);
      }
    }
    made.as_made = std::max(made.as_made, bounds.best);
    bounds.proven = bounds.plan == bounds.best;
    bounds.boards_above =
        dearest > 0 ? static_cast<double>(bounds.plan - bounds.best) / static_cast<double>(dearest)
                    : 0;
  }

  LumberReport& report_;
  const LumberWishes& wishes_;
  Racks racks_;
  /// How many parts are made in the same ways, by the first of their racks.
  std::map<std::size_t, std::map<std::vector<lumber::Way>, std::int64_t>> alike_;
};

bool same_wants(const MaterialPlan& a, const MaterialPlan& b) {
  return std::equal(a.order.wants.begin(), a.order.wants.end(), b.order.wants.begin(),
                    b.order.wants.end(), [](const lumber::Want& one, const lumber::Want& other) {
                      return one.length == other.length && one.width == other.width;
                    });
}

}  // namespace

void bound_every_way(LumberReport& report, const std::vector<std::vector<LumberWay>>& ways,
                     const LumberWishes& wishes) {
  Bounding(report, ways, wishes).run();
}

void raise_bound(MaterialPlan& plan, const MaterialPlan& other) {
  lumber::Bounds& bounds = plan.plan.bounds;
  const lumber::Bounds& others = other.plan.bounds;
  if (others.measure != bounds.measure || others.best <= bounds.best) return;
  if (!plan.plan.unplaced.empty() || !other.plan.unplaced.empty()) return;
  if (plan.thickness != other.thickness || !same_material(plan.material, other.material) ||
      !same_wants(plan, other))
    return;
  const double board = static_cast<double>(bounds.plan - bounds.best) / bounds.boards_above;
  bounds.area = std::max(bounds.area, others.area);
  bounds.whole_boards = std::max(bounds.whole_boards, others.whole_boards);
  bounds.linear = std::max(bounds.linear, others.linear);
  bounds.dual_whole = std::max(bounds.dual_whole, others.dual_whole);
  lumber::settle_best(bounds);
  bounds.proven = bounds.plan == bounds.best;
  bounds.boards_above = static_cast<double>(bounds.plan - bounds.best) / board;
}

}  // namespace haunch
