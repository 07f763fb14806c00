#include "gather.h"

#include <algorithm>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <utility>

#include "cut_order.h"
#include "groups.h"
#include "shelves.h"
#include "tidy.h"

namespace haunch::lumber {

namespace {

using Cuts = std::vector<Cut>;
using Boards = std::vector<std::size_t>;  // indices into Plan::boards

/// The plan's boards as piles of parts that may be exchanged.
class Gathering {
 public:
  Gathering(Plan& plan, const Model& model, const CuttingOrder& order)
      : plan_(plan), model_(model), order_(order), kind_of_(order.wants.size()) {
    for (std::size_t kind = 0; kind < model.parts.size(); ++kind)
      for (const std::size_t want : model.parts[kind].wants)
        kind_of_[want] = static_cast<std::uint32_t>(kind);
  }

  void run() {
    for (std::size_t board = 0; board < plan_.boards.size(); ++board)
      count(plan_.boards[board].cuts, board, 1);
    for (const std::string& group : std::vector<std::string>(plan_.split_groups)) {
      const Boards own = boards_of(group);
      if (own.size() < 2 || own.size() > kMostBoards || exchange(own)) continue;
      for (std::size_t other = 0; other < plan_.boards.size(); ++other) {
        if (exchanges_ >= kMostExchanges) break;
        if (std::find(own.begin(), own.end(), other) != own.end()) continue;
        Boards more = own;
        more.push_back(other);
        if (exchange(more)) break;
      }
    }
    plan_.split_groups = split_groups(plan_.boards, order_);
  }

 private:
  static constexpr std::size_t kMostBoards = 6;
  static constexpr int kMostExchanges = 2000;

  const std::string& group_of(const Cut& cut) const { return order_.wants[cut.want].group; }

  /// Pieces of groups on the board, once more or once less.
  void count(const Cuts& cuts, std::size_t board, int sign) {
    for (const Cut& cut : cuts) {
      if (group_of(cut).empty()) continue;
      std::map<std::size_t, int>& on = on_[group_of(cut)];
      if ((on[board] += sign) == 0) on.erase(board);
    }
  }

  Boards boards_of(const std::string& group) const {
    Boards boards;
    const auto on = on_.find(group);
    if (on == on_.end()) return boards;
    for (const auto& [board, pieces] : on->second)
      boards.push_back(board);
    return boards;
  }

  /// How many groups with pieces on these boards come from more than one.
  std::size_t splits_on(const Boards& boards) const {
    std::set<std::string> groups;
    for (const std::size_t board : boards)
      for (const Cut& cut : plan_.boards[board].cuts)
        groups.insert(group_of(cut));
    return static_cast<std::size_t>(
        std::count_if(groups.begin(), groups.end(), [this](const std::string& group) {
          const auto on = on_.find(group);
          return on != on_.end() && on->second.size() > 1;
        }));
  }

  /// Deals the parts of these boards out anew among them, groups whole as far as that goes; false,
  /// and nothing changed, where no fewer groups are split then.
  bool exchange(const Boards& boards) {
    if (++exchanges_ > kMostExchanges) return false;
    std::vector<Cuts> dealt(boards.size());
    for (const Cuts& unit : units_of(boards)) {
      if (put(unit, boards, dealt)) continue;
      for (const Cut& cut : unit)
        if (!put({cut}, boards, dealt)) return false;
    }
    if (std::any_of(dealt.begin(), dealt.end(), [](const Cuts& cuts) { return cuts.empty(); }))
      return false;
    const std::size_t before = splits_on(boards);
    std::vector<BoardPlan> made;
    for (std::size_t i = 0; i < boards.size(); ++i)
      made.push_back(sawn(plan_.boards[boards[i]], dealt[i]));
    swap_in(boards, made);
    if (splits_on(boards) < before) return true;
    swap_in(boards, made);
    return false;
  }

  void swap_in(const Boards& boards, std::vector<BoardPlan>& made) {
    for (std::size_t i = 0; i < boards.size(); ++i) {
      count(plan_.boards[boards[i]].cuts, boards[i], -1);
      std::swap(plan_.boards[boards[i]], made[i]);
      count(plan_.boards[boards[i]].cuts, boards[i], 1);
    }
  }

  /// The groups of which all parts are on these boards, the largest first; then the other parts.
  std::vector<Cuts> units_of(const Boards& boards) const {
    std::map<std::string, Cuts> groups;
    std::vector<Cuts> singles;
    for (const std::size_t board : boards)
      for (const Cut& cut : plan_.boards[board].cuts)
        groups[group_of(cut)].push_back(cut);
    std::vector<Cuts> units;
    for (auto& [group, cuts] : groups) {
      const Boards own = boards_of(group);
      const bool whole = !group.empty() && std::all_of(own.begin(), own.end(), [&](std::size_t it) {
        return std::find(boards.begin(), boards.end(), it) != boards.end();
      });
      if (whole) {
        units.push_back(std::move(cuts));
        continue;
      }
      for (const Cut& cut : cuts)
        singles.push_back({cut});
    }
    by_size(units);
    by_size(singles);
    units.insert(units.end(), singles.begin(), singles.end());
    return units;
  }

  static void by_size(std::vector<Cuts>& units) {
    const auto area = [](const Cuts& unit) {
      Area sum;
      for (const Cut& cut : unit)
        sum += area_of(cut.spot.length, cut.spot.width);
      return sum;
    };
    std::stable_sort(units.begin(), units.end(),
                     [&](const Cuts& a, const Cuts& b) { return area(a) > area(b); });
  }

  bool put(const Cuts& unit, const Boards& boards, std::vector<Cuts>& dealt) const {
    for (std::size_t i = 0; i < boards.size(); ++i) {
      Cuts all = dealt[i];
      all.insert(all.end(), unit.begin(), unit.end());
      if (!layout_of(all, plan_.boards[boards[i]])) continue;
      dealt[i] = std::move(all);
      return true;
    }
    return false;
  }

  std::optional<Pattern> layout_of(const Cuts& cuts, const BoardPlan& board) const {
    std::vector<Item> items;
    for (const Cut& cut : cuts) {
      items.push_back({kind_of_[cut.want], cut.turned});
      if (!fits(model_.parts[items.back().kind], cut.turned, model_.boards[kind_of(board)]))
        return {};
    }
    return board_on_shelves(std::move(items), model_, kind_of(board));
  }

  std::size_t kind_of(const BoardPlan& board) const {
    for (std::size_t kind = 0; kind < model_.boards.size(); ++kind)
      for (const Source& source : model_.boards[kind].sources)
        if (source.stock == board.stock) return kind;
    throw PlanFault("a board of no kind");
  }

  /// The board cut up into these parts.
  BoardPlan sawn(const BoardPlan& board, const Cuts& cuts) const {
    Supply::WantOrder wants(model_.parts.size());
    for (const Cut& cut : cuts)
      wants[kind_of_[cut.want]].push_back(cut.want);
    Pattern pattern = *layout_of(cuts, board);
    tidy(pattern, model_, order_);
    Supply supply(model_, std::move(wants));
    BoardPlan made = cut_up(pattern, model_, order_, supply);
    made.stock = board.stock;
    made.copy = board.copy;
    return made;
  }

  Plan& plan_;
  const Model& model_;
  const CuttingOrder& order_;
  std::vector<std::uint32_t> kind_of_;                    // each want
  std::map<std::string, std::map<std::size_t, int>> on_;  // pieces of each group, by board
  int exchanges_ = 0;
};

}  // namespace

void gather(Plan& plan, const Model& model, const CuttingOrder& order) {
  if (!plan.split_groups.empty() && model.three_stages) Gathering(plan, model, order).run();
}

}  // namespace haunch::lumber
