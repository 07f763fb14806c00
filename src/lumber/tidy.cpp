#include "tidy.h"

#include <map>
#include <tuple>
#include <utility>
#include <vector>

#include "cut_order.h"
#include "shelves.h"

namespace haunch::lumber {

namespace {

/// What speaks for a layout; less is better.
struct Untidiness {
  Area lost;             // neither parts nor kept offcuts
  double largeness = 0;  // less for larger offcuts: minus the sum of their areas squared
  std::size_t steps = 0;
};

Untidiness untidiness_of(const Pattern& pattern, const Model& model, const CuttingOrder& order) {
  Supply::WantOrder wants(model.parts.size());  // of each kind the first, as many as there are
  for (const auto& [kind, count] : pattern.parts)
    wants[kind].assign(model.parts[kind].wants.begin(), model.parts[kind].wants.begin() + count);
  Supply supply(model, std::move(wants));
  const BoardPlan board = cut_up(pattern, model, order, supply);
  const Stock& stock = order.stock[board.stock];
  Untidiness found{area_of(stock.length, stock.width), 0, board.steps.size()};
  for (const Cut& cut : board.cuts)
    found.lost -= area_of(cut.spot.length, cut.spot.width);
  for (const Spot& offcut : board.offcuts) {
    const Area area = area_of(offcut.length, offcut.width);
    found.lost -= area;
    found.largeness -= square_mm(area) * square_mm(area);
  }
  return found;
}

bool is_tidier(const Untidiness& a, const Untidiness& b) {
  if (b.lost < a.lost) return false;
  return std::tie(a.largeness, a.steps) < std::tie(b.largeness, b.steps);
}

std::vector<Item> items_of(const SpanLayout& layout) {
  std::vector<Item> items;
  for (const Section& section : layout.sections)
    for (const Row& row : section)
      items.insert(items.end(), row.begin(), row.end());
  return items;
}

/// Sections whose rows are as high become one: what lies beside the rows is then one long piece.
SpanLayout merged(const SpanLayout& layout, const Model& model) {
  const View view{layout.rip_first};
  std::map<std::vector<std::int64_t>, std::size_t> place;
  SpanLayout made{layout.rip_first, {}};
  for (const Section& section : layout.sections) {
    std::vector<std::int64_t> heights;
    for (const Row& row : section)
      heights.push_back(height(row, model, view));
    const auto [at, is_new] = place.try_emplace(heights, made.sections.size());
    if (is_new) {
      made.sections.push_back(section);
      continue;
    }
    Section& whole = made.sections[at->second];
    for (std::size_t row = 0; row < section.size(); ++row)
      whole[row].insert(whole[row].end(), section[row].begin(), section[row].end());
  }
  return made;
}

/// Other layouts of what the span holds.
std::vector<SpanLayout> others(const SpanLayout& now, const Model& model, const BoardKind& board,
                               const Span& span) {
  std::vector<SpanLayout> all = {merged(now, model)};
  const std::vector<Item> items = items_of(now);
  for (const bool rip_first : {false, true}) {
    if (!(rip_first ? model.u_across : model.u_along)) continue;
    const auto layout = span_on_shelves(items, model, board, span, rip_first);
    if (!layout) continue;
    all.push_back(*layout);
    all.push_back(merged(*layout, model));
  }
  return all;
}

}  // namespace

void tidy(Pattern& pattern, const Model& model, const CuttingOrder& order) {
  if (!model.three_stages) return;
  Untidiness best = untidiness_of(pattern, model, order);
  const BoardKind& board = model.boards[pattern.board];
  for (std::size_t i = 0; i < pattern.spans.size(); ++i) {
    if (pattern.spans[i].sections.empty()) continue;
    for (SpanLayout& layout : others(pattern.spans[i], model, board, board.spans[i])) {
      Pattern other = pattern;
      other.spans[i] = std::move(layout);
      const Untidiness found = untidiness_of(other, model, order);
      if (!is_tidier(found, best)) continue;
      best = found;
      pattern = std::move(other);
    }
  }
}

}  // namespace haunch::lumber
