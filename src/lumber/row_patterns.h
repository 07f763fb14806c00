// Parts in a row: the most value that fits a length.
//
//   RowItem        what may be taken
//   RowSearch      exact by branch and bound, or the best within so many nodes
#pragma once

#include <cstdint>
#include <vector>

namespace haunch::lumber {

struct RowItem {
  std::int64_t size = 0;  // > 0
  double value = 0;       // > 0
  int most = 0;           // how many may be taken
};

struct RowChoice {
  double value = 0;         // 0 when nothing came over the threshold
  double at_most = 0;       // no choice is worth more than this
  std::vector<int> counts;  // by item; empty with value 0
};

/// One search after the other, in the same memory: there are very many of them.
class RowSearch {
 public:
  /// The choice of most value above `threshold` whose sizes add up to `capacity` at most. `items`
  /// fall in value for size. After `nodes` steps the best so far is taken; `at_most` then says how
  /// much more there might be. What it returns holds until the next search.
  const RowChoice& best(const std::vector<RowItem>& items, std::int64_t capacity, double threshold,
                        std::int64_t nodes);

  /// Steps of all searches so far.
  std::int64_t steps() const { return steps_; }

 private:
  void descend(std::size_t index, std::int64_t room, double value);

  const std::vector<RowItem>* items_ = nullptr;
  std::int64_t nodes_ = 0;
  std::int64_t steps_ = 0;
  double best_ = 0;
  std::vector<int> counts_;
  std::vector<std::int64_t> smallest_;
  RowChoice choice_;
};

}  // namespace haunch::lumber
