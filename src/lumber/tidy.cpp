#include "tidy.h"

#include <algorithm>
#include <optional>
#include <tuple>
#include <utility>
#include <vector>

#include "cut_order.h"

namespace haunch::lumber {

namespace {

/// What speaks for a layout; less is better.
struct Untidiness {
  Area lost;             // neither parts nor kept offcuts
  double largeness = 0;  // less for larger offcuts: minus the sum of their areas squared
  std::size_t steps = 0;
};

Untidiness untidiness_of(const Pattern& pattern, const Model& model, const CuttingOrder& order) {
  Supply::WantOrder wants;
  for (const PartKind& kind : model.parts)
    wants.push_back(kind.wants);
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

/// Sections along u, each of items one above the other.
class Shelves {
 public:
  Shelves(const Model& model, const BoardKind& board, const Span& span, bool rip_first)
      : model_(model), view_{rip_first} {
    left_ = view_.u(board, span);
    room_ = view_.v(board, span);
  }

  bool put(const Item& item) {
    const PartKind& part = model_.parts[item.kind];
    const std::int64_t size = view_.v(part, item.turned);
    for (std::size_t i = 0; i < sections_.size(); ++i) {
      if (used_[i] + size > room_) continue;
      used_[i] += size;
      sections_[i].push_back({item});
      return true;
    }
    left_ -= view_.u(part, item.turned);
    if (left_ < 0 || size > room_) return false;
    sections_.push_back({{item}});
    used_.push_back(size);
    return true;
  }

  View view() const { return view_; }
  SpanLayout layout() && { return {view_.rip_first, std::move(sections_)}; }

 private:
  const Model& model_;
  View view_;
  std::int64_t left_ = 0;  // along u
  std::int64_t room_ = 0;  // across v
  std::vector<Section> sections_;
  std::vector<std::int64_t> used_;  // of the room of each
};

std::vector<Item> items_of(const SpanLayout& layout) {
  std::vector<Item> items;
  for (const Section& section : layout.sections)
    for (const Row& row : section)
      items.insert(items.end(), row.begin(), row.end());
  return items;
}

/// The largest items first, each in the first section that has room for it. Nothing where they do
/// not fit.
std::optional<SpanLayout> on_shelves(std::vector<Item> items, Shelves shelves, const Model& model) {
  const View view = shelves.view();
  const auto sizes = [&](const Item& item) {
    const PartKind& part = model.parts[item.kind];
    return std::tuple(view.u(part, item.turned), view.v(part, item.turned), item.kind);
  };
  std::sort(items.begin(), items.end(),
            [&](const Item& a, const Item& b) { return sizes(a) > sizes(b); });
  for (const Item& item : items)
    if (!shelves.put(item)) return {};
  return std::move(shelves).layout();
}

}  // namespace

void tidy(Pattern& pattern, const Model& model, const CuttingOrder& order) {
  if (!model.three_stages) return;
  Untidiness best = untidiness_of(pattern, model, order);
  const BoardKind& board = model.boards[pattern.board];
  for (std::size_t i = 0; i < pattern.spans.size(); ++i) {
    const std::vector<Item> items = items_of(pattern.spans[i]);
    for (const bool rip_first : {false, true}) {
      if (items.empty() || !(rip_first ? model.u_across : model.u_along)) continue;
      const auto layout =
          on_shelves(items, Shelves(model, board, board.spans[i], rip_first), model);
      if (!layout) continue;
      Pattern other = pattern;
      other.spans[i] = *layout;
      const Untidiness found = untidiness_of(other, model, order);
      if (!is_tidier(found, best)) continue;
      best = found;
      pattern = std::move(other);
    }
  }
}

}  // namespace haunch::lumber
