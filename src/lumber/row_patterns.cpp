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

}  // namespace

const RowChoice& RowSearch::best(const std::vector<RowItem>& items, std::int64_t capacity,
                                 double threshold, std::int64_t nodes) {
  items_ = &items;
  nodes_ = nodes;
  best_ = threshold;
  counts_.assign(items.size(), 0);
  choice_.counts.clear();
  smallest_.resize(items.size() + 1);
  std::int64_t least = INT64_MAX;
  for (std::size_t index = items.size(); index-- > 0;) {
    least = std::min(least, items[index].size);
    smallest_[index] = least;
  }
  descend(0, capacity, 0);
  steps_ += nodes - std::max<std::int64_t>(0, nodes_);
  choice_.value = choice_.counts.empty() ? 0 : best_;
  choice_.at_most = nodes_ > 0 ? best_ : fractional(items, 0, capacity);
  return choice_;
}

/// Depth first, the most of the best item first.
void RowSearch::descend(std::size_t index, std::int64_t room, double value) {
  const std::vector<RowItem>& items = *items_;
  if (value > best_) {
    best_ = value;
    choice_.counts = counts_;
  }
  while (index < items.size() && items[index].size > room)
    ++index;
  if (index == items.size() || room < smallest_[index]) return;
  const RowItem& item = items[index];
  const auto most = static_cast<int>(std::min<std::int64_t>(item.most, room / item.size));
  for (int count = most; count >= 0; --count) {
    if (--nodes_ <= 0) break;
    const std::int64_t rest = room - item.size * count;
    const double now = value + item.value * count;
    // Fewer of the densest item never bound higher.
    if (now + fractional(items, index + 1, rest) <= best_) break;
    counts_[index] = count;
    descend(index + 1, rest, now);
  }
  counts_[index] = 0;
}

}  // namespace haunch::lumber
