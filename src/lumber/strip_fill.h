// One board filled with the parts that are still wanted, for the most value: greedy, by value for
// the room taken, in sections, rows and items.
//
//   FillCare      how much is tried
//   Filler        fills boards
//   value_of      of a pattern
#pragma once

#include <vector>

#include "pattern.h"
#include "random.h"
#include "row_patterns.h"

namespace haunch::lumber {

/// How much a Filler tries at each choice.
struct FillCare {
  std::size_t sections = 6;          // lengths of a section
  std::size_t heights = 6;           // heights of a row
  std::int64_t row_nodes = 40;       // branches in filling a row
  std::int64_t single_nodes = 3000;  // the same where all parts of a board are in one row
};

class Filler {
 public:
  explicit Filler(const Model& model);

  /// A pattern of at most `left[kind]` of each kind, whose value is worth `values[kind]` each.
  /// What is tried is drawn by `random` where there is more than `care` allows.
  Pattern fill(std::size_t board, const std::vector<double>& values, const std::vector<int>& left,
               const FillCare& care, Random& random);

  /// Work so far, counted.
  std::int64_t work() const { return work_ + kStepWork * row_search_.steps(); }

 private:
  static constexpr std::int64_t kStepWork = 10;

  /// A part that may still be taken, one way round, in one view.
  struct Choice {
    Item item;
    std::int64_t u = 0, v = 0;
    double value = 0;
  };
  struct DraftRow {
    std::vector<Item> items;
    double value = 0;
    std::int64_t height = 0, extent = 0;
  };
  struct Draft {
    std::vector<Item> items;        // row after row
    std::vector<std::size_t> ends;  // of the rows, in `items`
    double value = 0;
    std::int64_t extent = 0;
  };

  SpanLayout fill_either_way(const BoardKind& board, const Span& span);
  bool few_left() const;
  double charged(std::int64_t size, std::int64_t room, std::int64_t least) const;
  SpanLayout fill_span(const BoardKind& board, const Span& span, View view);
  SpanLayout fill_single(const BoardKind& board, const Span& span);
  void list_choices(const BoardKind& board, View view, std::int64_t u, std::int64_t v);
  std::int64_t least_u() const;
  void draw_extents(std::int64_t room);
  void draw_heights(std::int64_t room, std::int64_t extent);
  static Section section_of(const Draft& draft);
  void fill_section(Draft& draft, std::int64_t extent, std::int64_t v);
  void fill_row(DraftRow& row, std::int64_t extent, std::int64_t height);
  void draw(std::vector<std::int64_t>& among, std::size_t most);
  void take(const std::vector<Item>& items, int sign);
  double value_of(const SpanLayout& layout) const;

  const Model& model_;
  std::vector<int> left_;
  bool whole_room_free_ = false;
  const std::vector<double>* values_ = nullptr;
  const FillCare* care_ = nullptr;
  Random* random_ = nullptr;
  std::vector<Choice> choices_;            // falling in value for u
  std::vector<std::size_t> by_u_, by_v_;   // indices of choices_, by size
  std::vector<std::size_t> short_enough_;  // indices of choices_ that fit the section's extent
  std::vector<std::int64_t> extents_, heights_;
  Draft draft_, best_draft_;
  DraftRow row_, best_row_;
  std::vector<RowItem> row_items_;
  std::vector<std::size_t> row_from_;  // indices of choices_ that row_items_ are of
  RowSearch row_search_;
  std::int64_t work_ = 0;
};

double value_of(const Pattern& pattern, const std::vector<double>& values);

}  // namespace haunch::lumber
