#include "gather.h"

#include <algorithm>
#include <map>
#include <optional>
#include <string>
#include <utility>

#include "groups.h"

namespace haunch::lumber {

namespace {

using Wants = std::vector<std::size_t>;  // indices into CuttingOrder::wants

constexpr int kTrials = 150;  // layouts of one board, for one plan

Area area_of(const Wants& wants, const CuttingOrder& order) {
  Area area;
  for (const std::size_t want : wants)
    area += lumber::area_of(order.wants[want].length, order.wants[want].width);
  return area;
}

/// The groups, largest first, then one by one what has none.
std::vector<Wants> units_of(const CuttingOrder& order) {
  std::map<std::string, Wants> groups;
  std::vector<Wants> units;
  for (std::size_t want = 0; want < order.wants.size(); ++want) {
    const std::string& group = order.wants[want].group;
    if (group.empty())
      units.push_back({want});
    else
      groups[group].push_back(want);
  }
  for (auto& [name, wants] : groups)
    units.push_back(std::move(wants));
  std::stable_sort(units.begin(), units.end(), [&order](const Wants& a, const Wants& b) {
    const auto rank = [&order](const Wants& unit) {
      return std::pair(order.wants[unit.front()].group.empty() ? 1 : 0,
                       Area() - area_of(unit, order));
    };
    return rank(a) < rank(b);
  });
  return units;
}

/// Fills boards with whole units.
class Gathering {
 public:
  Gathering(const Plan& plan, const CuttingOrder& order) : order_(order) {
    for (const BoardPlan& board : plan.boards)
      boards_.push_back({board.stock, board.copy, {}, {}, {}});
    contents_.resize(boards_.size());
    for (const BoardPlan& board : plan.boards)
      room_.push_back(room_of(order.stock[board.stock]));
  }

  /// What no board holds as a whole is taken apart; false when a piece of it finds no place.
  bool put(const Wants& unit) {
    if (put_on_one(unit)) return true;
    return unit.size() > 1 && std::all_of(unit.begin(), unit.end(),
                                          [this](std::size_t want) { return put_on_one({want}); });
  }

  bool has_empty_board() const {
    return std::any_of(contents_.begin(), contents_.end(),
                       [](const Wants& wants) { return wants.empty(); });
  }

  std::vector<BoardPlan> take() && { return std::move(boards_); }

 private:
  static Area room_of(const Stock& stock) {
    return lumber::area_of(stock.length - stock.end_trim * 2, stock.width - stock.edge_trim * 2);
  }

  bool put_on_one(const Wants& unit) {
    for (std::size_t board = 0; board < boards_.size(); ++board) {
      Wants all = contents_[board];
      all.insert(all.end(), unit.begin(), unit.end());
      if (area_of(all, order_) > room_[board] || trials_ == kTrials) continue;
      ++trials_;
      auto layout = layout_of(all, boards_[board]);
      if (!layout) continue;
      contents_[board] = std::move(all);
      boards_[board] = std::move(*layout);
      return true;
    }
    return false;
  }

  /// All of them on this board; nothing where the search finds no room.
  std::optional<BoardPlan> layout_of(const Wants& wants, const BoardPlan& board) const {
    CuttingOrder one = order_;
    one.stock = {order_.stock[board.stock]};
    one.stock.front().count = 1;
    one.stock.front().bought = true;  // money is the measure, so that it is searched once
    one.stock.front().cost = 1;
    one.wants.clear();
    for (const std::size_t want : wants) {
      one.wants.push_back(order_.wants[want]);
      one.wants.back().group.clear();
    }
    Plan plan = plan_cutting(one);
    if (!plan.unplaced.empty()) return {};
    BoardPlan layout = std::move(plan.boards.front());
    layout.stock = board.stock;
    layout.copy = board.copy;
    for (Cut& cut : layout.cuts)
      cut.want = wants[cut.want];
    return layout;
  }

  const CuttingOrder& order_;
  std::vector<BoardPlan> boards_;
  std::vector<Wants> contents_;
  std::vector<Area> room_;
  int trials_ = 0;
};

}  // namespace

void gather(Plan& plan, const CuttingOrder& order) {
  if (plan.split_groups.empty() || !plan.unplaced.empty()) return;
  Gathering gathering(plan, order);
  for (const Wants& unit : units_of(order))
    if (!gathering.put(unit)) return;
  if (gathering.has_empty_board()) return;
  std::vector<BoardPlan> boards = std::move(gathering).take();
  std::vector<std::string> split = split_groups(boards, order);
  if (split.size() >= plan.split_groups.size()) return;
  plan.boards = std::move(boards);
  plan.split_groups = std::move(split);
}

}  // namespace haunch::lumber
