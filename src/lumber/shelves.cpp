#include "shelves.h"

#include <algorithm>
#include <tuple>
#include <utility>

namespace haunch::lumber {

namespace {

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
    const std::int64_t extent = view_.u(part, item.turned);
    if (extent > left_ || size > room_) return false;
    left_ -= extent;
    sections_.push_back({{item}});
    used_.push_back(size);
    return true;
  }

  SpanLayout layout() && { return {view_.rip_first, std::move(sections_)}; }

 private:
  const Model& model_;
  View view_;
  std::int64_t left_ = 0;  // along u
  std::int64_t room_ = 0;  // across v
  std::vector<Section> sections_;
  std::vector<std::int64_t> used_;  // of the room of each
};

/// The largest first: those that take most of u, then of v.
void sort_items(std::vector<Item>& items, const Model& model, View view) {
  const auto sizes = [&](const Item& item) {
    const PartKind& part = model.parts[item.kind];
    return std::tuple(view.u(part, item.turned), view.v(part, item.turned), item.kind);
  };
  std::sort(items.begin(), items.end(),
            [&](const Item& a, const Item& b) { return sizes(a) > sizes(b); });
}

}  // namespace

std::optional<SpanLayout> span_on_shelves(std::vector<Item> items, const Model& model,
                                          const BoardKind& board, const Span& span,
                                          bool rip_first) {
  Shelves shelves(model, board, span, rip_first);
  sort_items(items, model, View{rip_first});
  for (const Item& item : items)
    if (!shelves.put(item)) return {};
  return std::move(shelves).layout();
}

std::optional<Pattern> board_on_shelves(std::vector<Item> items, const Model& model,
                                        std::size_t board) {
  const BoardKind& kind = model.boards[board];
  for (const bool rip_first : {false, true}) {
    if (!(rip_first ? model.u_across : model.u_along)) continue;
    sort_items(items, model, View{rip_first});
    std::vector<Shelves> spans;
    for (const Span& span : kind.spans)
      spans.emplace_back(model, kind, span, rip_first);
    const bool all = std::all_of(items.begin(), items.end(), [&](const Item& item) {
      return std::any_of(spans.begin(), spans.end(),
                         [&](Shelves& shelves) { return shelves.put(item); });
    });
    if (!all) continue;
    Pattern pattern;
    pattern.board = board;
    for (Shelves& shelves : spans)
      pattern.spans.push_back(std::move(shelves).layout());
    count_parts(pattern);
    return pattern;
  }
  return {};
}

}  // namespace haunch::lumber
