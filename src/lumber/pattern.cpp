#include "pattern.h"

#include <algorithm>
#include <map>

namespace haunch::lumber {

SpanLayout in_a_row(const Row& items, const Model& model) {
  SpanLayout layout;
  if (items.empty()) return layout;
  layout.rip_first = !model.u_along;
  if (model.u_along && !model.three_stages) {
    layout.sections = {{items}};
    return layout;
  }
  if (!model.u_along) layout.sections.emplace_back();
  for (const Item& item : items) {
    if (model.u_along) layout.sections.emplace_back();
    layout.sections.back().push_back({item});
  }
  return layout;
}

void count_parts(Pattern& pattern) {
  std::map<std::uint32_t, int> counts;
  for (const SpanLayout& span : pattern.spans) {
    for (const Section& section : span.sections) {
      for (const Row& row : section) {
        for (const Item& item : row)
          ++counts[item.kind];
      }
    }
  }
  pattern.parts.assign(counts.begin(), counts.end());
}

void drop_beyond(Pattern& pattern, const std::vector<int>& limit) {
  std::vector<int> left = limit;
  for (SpanLayout& span : pattern.spans) {
    for (Section& section : span.sections) {
      for (Row& row : section) {
        std::erase_if(row, [&left](const Item& item) { return left[item.kind]-- <= 0; });
      }
      std::erase_if(section, [](const Row& row) { return row.empty(); });
    }
    std::erase_if(span.sections, [](const Section& section) { return section.empty(); });
  }
  count_parts(pattern);
}

std::int64_t extent(const Row& row, const Model& model, View view) {
  std::int64_t sum = 0;
  for (const Item& item : row)
    sum += view.u(model.parts[item.kind], item.turned);
  return sum;
}

std::int64_t extent(const Section& section, const Model& model, View view) {
  std::int64_t most = 0;
  for (const Row& row : section)
    most = std::max(most, extent(row, model, view));
  return most;
}

std::int64_t height(const Row& row, const Model& model, View view) {
  std::int64_t most = 0;
  for (const Item& item : row) {
    most = std::max(most, view.v(model.parts[item.kind], item.turned));
  }
  return most;
}

Score score_of(const Solution& solution, const Model& model) {
  Score score;
  for (std::size_t kind = 0; kind < solution.missing.size(); ++kind) {
    const PartKind& part = model.parts[kind];
    score.missing_area += static_cast<double>(solution.missing[kind]) *
                          static_cast<double>(part.length) * static_cast<double>(part.width);
  }
  for (const Pattern& pattern : solution.patterns) {
    const BoardKind& board = model.boards[pattern.board];
    score.price += board.price;
    score.cost += board.cost;
    score.area_square_mm += floor_square_mm(board.area());
  }
  score.boards = static_cast<std::int64_t>(solution.patterns.size());
  return score;
}

}  // namespace haunch::lumber
