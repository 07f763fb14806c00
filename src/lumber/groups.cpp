#include "groups.h"

#include <algorithm>
#include <map>
#include <set>

namespace haunch::lumber {

namespace {

constexpr std::size_t kOpen = SIZE_MAX;

struct Group {
  std::vector<std::pair<std::size_t, std::size_t>> pieces;  // want, part kind
};

using Counts = std::vector<std::pair<std::size_t, std::size_t>>;  // by part kind, each > 0

/// How many more of each kind boards have room for, and where their places start in the order.
class Places {
 public:
  Places(const std::vector<Pattern>& patterns, const Model& model) : order_(model.parts.size()) {
    for (const Pattern& pattern : patterns) {
      Counts room;
      auto& starts = starts_.emplace_back();
      for (const auto& [kind, count] : pattern.parts) {
        const std::size_t start = order_[kind].size();
        order_[kind].resize(start + static_cast<std::size_t>(count), kOpen);
        starts[kind] = start;
        room.emplace_back(kind, static_cast<std::size_t>(count));
      }
      alike_[std::move(room)].insert(starts_.size() - 1);
    }
  }

  /// Puts as many of the group on one board as go there; takes them out of it. False when none
  /// does. It is the board that takes most, of equal ones the first.
  bool put(Group& group);

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
  std::vector<std::map<std::size_t, std::size_t>> starts_;  // of each board's places, by kind
  std::map<Counts, std::set<std::size_t>> alike_;           // boards by their room: many are alike
};

/// How many of the wanted ones there is room for.
std::size_t would_take(const Counts& room, const Counts& wanted) {
  std::size_t pieces = 0;
  for (const auto& [kind, count] : wanted)
    for (const auto& [other, free] : room)
      if (other == kind) pieces += std::min(count, free);
  return pieces;
}

Counts counts_of(const Group& group) {
  std::map<std::size_t, std::size_t> counts;
  for (const auto& piece : group.pieces)
    ++counts[piece.second];
  return {counts.begin(), counts.end()};
}

bool Places::put(Group& group) {
  const Counts wanted = counts_of(group);
  std::size_t most = 0;
  auto best = alike_.end();
  for (auto boards = alike_.begin(); boards != alike_.end(); ++boards) {
    const std::size_t takes = would_take(boards->first, wanted);
    const bool sooner =
        best != alike_.end() && takes == most && *boards->second.begin() < *best->second.begin();
    if (takes == 0 || (takes <= most && !sooner)) continue;
    most = takes;
    best = boards;
  }
  if (best == alike_.end()) return false;
  const std::size_t board = *best->second.begin();
  Counts room = best->first;
  best->second.erase(best->second.begin());
  if (best->second.empty()) alike_.erase(best);
  std::erase_if(group.pieces, [&](const auto& piece) {
    const auto free = std::find_if(room.begin(), room.end(),
                                   [&piece](const auto& it) { return it.first == piece.second; });
    if (free == room.end() || free->second == 0) return false;
    --free->second;
    order_[piece.second][starts_[board][piece.second]++] = piece.first;
    return true;
  });
  std::erase_if(room, [](const auto& it) { return it.second == 0; });
  if (!room.empty()) alike_[std::move(room)].insert(board);
  return true;
}

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

}  // namespace

Supply::WantOrder want_order(const std::vector<Pattern>& patterns, const Model& model,
                             const CuttingOrder& order) {
  Places places(patterns, model);
  for (Group& group : groups_of(model, order))
    while (!group.pieces.empty() && places.put(group)) {
    }
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
