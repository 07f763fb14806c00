#include "groups.h"

#include <algorithm>
#include <map>
#include <set>

namespace haunch::lumber {

namespace {

constexpr std::size_t kOpen = SIZE_MAX;

/// How many more of each kind a board has room for, and where its places start in the order.
class Places {
 public:
  Places(const std::vector<Pattern>& patterns, const Model& model) : order_(model.parts.size()) {
    for (const Pattern& pattern : patterns) {
      auto& board = boards_.emplace_back();
      for (const auto& [kind, count] : pattern.parts) {
        const std::size_t start = order_[kind].size();
        order_[kind].resize(start + static_cast<std::size_t>(count), kOpen);
        board[kind] = {start, start + static_cast<std::size_t>(count)};
      }
    }
  }

  std::size_t boards() const { return boards_.size(); }

  std::size_t room(std::size_t board, std::size_t kind) const {
    const auto found = boards_[board].find(kind);
    return found == boards_[board].end() ? 0 : found->second.second - found->second.first;
  }

  void put(std::size_t board, std::size_t kind, std::size_t want) {
    order_[kind][boards_[board].at(kind).first++] = want;
  }

  /// Fills what is open with the rest of the wants, in their order; what finds no place is last.
  Supply::WantOrder fill(const Model& model) && {
    for (std::size_t kind = 0; kind < order_.size(); ++kind) {
      std::vector<std::size_t>& places = order_[kind];
      const std::set<std::size_t> placed(places.begin(), places.end());
      auto open = std::find(places.begin(), places.end(), kOpen);
      std::vector<std::size_t> over;
      for (const std::size_t want : model.parts[kind].wants) {
        if (placed.contains(want)) continue;
        if (open == places.end()) {
          over.push_back(want);
          continue;
        }
        *open = want;
        open = std::find(open, places.end(), kOpen);
      }
      places.insert(places.end(), over.begin(), over.end());
    }
    return std::move(order_);
  }

 private:
  Supply::WantOrder order_;
  std::vector<std::map<std::size_t, std::pair<std::size_t, std::size_t>>> boards_;
};

struct Group {
  std::vector<std::pair<std::size_t, std::size_t>> pieces;  // want, part kind
};

/// Largest first: they find a board of their own the hardest.
std::vector<Group> groups_of(const Model& model, const CuttingOrder& order) {
  std::map<std::string, Group> by_name;
  for (std::size_t kind = 0; kind < model.parts.size(); ++kind) {
    for (const std::size_t want : model.parts[kind].wants) {
      const std::string& name = order.wants[want].group;
      if (!name.empty()) by_name[name].pieces.emplace_back(want, kind);
    }
  }
  std::vector<Group> groups;
  for (auto& [name, group] : by_name) {
    std::sort(group.pieces.begin(), group.pieces.end());
    groups.push_back(std::move(group));
  }
  std::stable_sort(groups.begin(), groups.end(), [](const Group& a, const Group& b) {
    return a.pieces.size() > b.pieces.size();
  });
  return groups;
}

/// How many of the group's pieces the board has places for.
std::size_t would_take(const Places& places, std::size_t board, const Group& group) {
  std::map<std::size_t, std::size_t> taken;
  std::size_t pieces = 0;
  for (const auto& piece : group.pieces) {
    if (taken[piece.second] == places.room(board, piece.second)) continue;
    ++taken[piece.second];
    ++pieces;
  }
  return pieces;
}

/// Board after board, always the one that takes most.
void place(Places& places, Group group) {
  while (!group.pieces.empty()) {
    std::size_t best = 0;
    std::size_t most = 0;
    for (std::size_t board = 0; board < places.boards(); ++board) {
      const std::size_t takes = would_take(places, board, group);
      if (takes > most) {
        most = takes;
        best = board;
      }
    }
    if (most == 0) return;
    std::erase_if(group.pieces, [&places, best](const auto& piece) {
      if (places.room(best, piece.second) == 0) return false;
      places.put(best, piece.second, piece.first);
      return true;
    });
  }
}

}  // namespace

Supply::WantOrder want_order(const std::vector<Pattern>& patterns, const Model& model,
                             const CuttingOrder& order) {
  Places places(patterns, model);
  for (const Group& group : groups_of(model, order))
    place(places, group);
  return std::move(places).fill(model);
}

std::vector<std::string> split_groups(const std::vector<BoardPlan>& boards,
                                      const CuttingOrder& order) {
  std::map<std::string, std::set<std::size_t>> boards_of;
  for (std::size_t board = 0; board < boards.size(); ++board) {
    for (const Cut& cut : boards[board].cuts)
      boards_of[order.wants[cut.want].group].insert(board);
  }
  std::vector<std::string> split;
  std::set<std::string> told;
  for (const Want& want : order.wants) {
    if (want.group.empty() || !told.insert(want.group).second) continue;
    const auto found = boards_of.find(want.group);
    if (found != boards_of.end() && found->second.size() > 1) split.push_back(want.group);
  }
  return split;
}

}  // namespace haunch::lumber
