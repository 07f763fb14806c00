#include "row_patterns.h"

#include <algorithm>

namespace haunch::lumber {

namespace {

/// No more value than this fits, from item `index` on: the last item in part.
double fractional(const std::vector<RowItem>& items, std::size_t index, std::int64_t room) {
  double value = 0;
  for (; index < items.size(); ++index) {
    const RowItem& item = items[index];
    const std::int64_t wanted = item.size * item.most;
    if (wanted >= room)
      return value + item.value * static_cast<double>(room) / static_cast<double>(item.size);
    value += item.value * item.most;
    room -= wanted;
  }
  return value;
}

/// Depth first, the most of the best item first.
class RowSearch {
 public:
  RowSearch(const std::vector<RowItem>& items, double threshold, std::int64_t nodes)
      : items_(items), nodes_(nodes), best_(threshold), counts_(items.size()) {
    smallest_.resize(items.size() + 1, 0);
    std::int64_t least = INT64_MAX;
    for (std::size_t index = items.size(); index-- > 0;) {
      least = std::min(least, items[index].size);
      smallest_[index] = least;
    }
  }

  void run(std::int64_t capacity) { descend(0, capacity, 0); }

  bool found() const { return !chosen_.empty(); }
  bool complete() const { return nodes_ > 0; }
  double best() const { return best_; }
  std::vector<int>& chosen() { return chosen_; }

 private:
  void descend(std::size_t index, std::int64_t room, double value) {
    if (value > best_) {
      best_ = value;
      chosen_ = counts_;
    }
    while (index < items_.size() && items_[index].size > room)
      ++index;
    if (index == items_.size() || room < smallest_[index]) return;
    const RowItem& item = items_[index];
    const auto most = static_cast<int>(std::min<std::int64_t>(item.most, room / item.size));
    for (int count = most; count >= 0; --count) {
      if (--nodes_ <= 0) break;
      const std::int64_t rest = room - item.size * count;
      const double now = value + item.value * count;
      // Fewer of the densest item never bound higher.
      if (now + fractional(items_, index + 1, rest) <= best_) break;
      counts_[index] = count;
      descend(index + 1, rest, now);
    }
    counts_[index] = 0;
  }

  const std::vector<RowItem>& items_;
  std::int64_t nodes_;
  double best_;
  std::vector<int> counts_, chosen_;
  std::vector<std::int64_t> smallest_;
};

}  // namespace

RowChoice best_row(const std::vector<RowItem>& items, std::int64_t capacity, double threshold,
                   std::int64_t nodes) {
  RowSearch search(items, threshold, nodes);
  search.run(capacity);
  RowChoice choice;
  if (search.found()) {
    choice.value = search.best();
    choice.counts = std::move(search.chosen());
  }
  choice.at_most = search.complete() ? search.best() : fractional(items, 0, capacity);
  return choice;
}

}  // namespace haunch::lumber
