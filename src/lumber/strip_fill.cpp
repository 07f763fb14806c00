#include "strip_fill.h"

#include <algorithm>
#include <numeric>

namespace haunch::lumber {

namespace {

void sort_unique(std::vector<std::int64_t>& sizes) {
  std::sort(sizes.begin(), sizes.end());
  sizes.erase(std::unique(sizes.begin(), sizes.end()), sizes.end());
}

}  // namespace

double value_of(const Pattern& pattern, const std::vector<double>& values) {
  double value = 0;
  for (const auto& [kind, count] : pattern.parts)
    value += values[kind] * count;
  return value;
}

Filler::Filler(const Model& model) : model_(model) {}

Pattern Filler::fill(std::size_t board, const std::vector<double>& values,
                     const std::vector<int>& left, const FillCare& care, Random& random) {
  left_ = left;
  values_ = &values;
  care_ = &care;
  random_ = &random;
  const BoardKind& kind = model_.boards[board];
  Pattern pattern;
  pattern.board = board;
  for (const Span& span : kind.spans) {
    SpanLayout best = model_.single_row ? fill_single(kind, span) : fill_either_way(kind, span);
    if (!model_.single_row && few_left()) {
      // The last parts: what room they take is no loss any more, as nothing else wants it.
      whole_room_free_ = true;
      SpanLayout other = fill_either_way(kind, span);
      whole_room_free_ = false;
      if (value_of(other) > value_of(best)) best = std::move(other);
    }
    for (const Section& section : best.sections) {
      for (const Row& row : section)
        take(row, 1);
    }
    pattern.spans.push_back(std::move(best));
  }
  count_parts(pattern);
  return pattern;
}

SpanLayout Filler::fill_either_way(const BoardKind& board, const Span& span) {
  SpanLayout best;
  if (model_.u_along) best = fill_span(board, span, View{false});
  if (model_.u_across) {
    SpanLayout other = fill_span(board, span, View{true});
    if (value_of(other) > value_of(best)) best = std::move(other);
  }
  return best;
}

bool Filler::few_left() const {
  constexpr int kFew = 12;
  return std::accumulate(left_.begin(), left_.end(), 0) <= kFew;
}

/// The room that a choice of this size is charged with: all of it where no other fits beside it.
double Filler::charged(std::int64_t size, std::int64_t room, std::int64_t least) const {
  if (whole_room_free_) return 1;
  return static_cast<double>(room - size < least ? room : size);
}

double Filler::value_of(const SpanLayout& layout) const {
  double value = 0;
  for (const Section& section : layout.sections) {
    for (const Row& row : section) {
      for (const Item& item : row)
        value += (*values_)[item.kind];
    }
  }
  return value;
}

void Filler::take(const std::vector<Item>& items, int sign) {
  for (const Item& item : items)
    left_[item.kind] -= sign;
}

void Filler::list_choices(const BoardKind& board, View view, std::int64_t u, std::int64_t v) {
  choices_.clear();
  work_ += static_cast<std::int64_t>(model_.parts.size());
  for (std::uint32_t kind = 0; kind < model_.parts.size(); ++kind) {
    if (left_[kind] <= 0) continue;
    const PartKind& part = model_.parts[kind];
    if (part.thickness != board.thickness) continue;
    for (const bool turned : {false, true}) {
      if (turned && ((board.grain && !part.turnable) || part.length == part.width)) continue;
      const Choice choice{.item = {kind, turned},
                          .u = view.u(part, turned),
                          .v = view.v(part, turned),
                          .value = (*values_)[kind]};
      if (choice.u <= u && choice.v <= v) choices_.push_back(choice);
    }
  }
  std::stable_sort(choices_.begin(), choices_.end(), [](const Choice& a, const Choice& b) {
    return a.value * static_cast<double>(b.u) > b.value * static_cast<double>(a.u);
  });
  by_u_.resize(choices_.size());
  std::iota(by_u_.begin(), by_u_.end(), std::size_t{0});
  by_v_ = by_u_;
  std::stable_sort(by_u_.begin(), by_u_.end(),
                   [this](std::size_t a, std::size_t b) { return choices_[a].u < choices_[b].u; });
  std::stable_sort(by_v_.begin(), by_v_.end(),
                   [this](std::size_t a, std::size_t b) { return choices_[a].v < choices_[b].v; });
}

SpanLayout Filler::fill_single(const BoardKind& board, const Span& span) {
  list_choices(board, View{false}, span.length, board.clear_width);
  row_items_.clear();
  for (const Choice& choice : choices_) {
    row_items_.push_back({choice.u, choice.value, left_[choice.item.kind]});
  }
  const RowChoice& chosen = row_search_.best(row_items_, span.length, 0, care_->single_nodes);
  Row row;
  for (std::size_t index = 0; index < chosen.counts.size(); ++index) {
    row.insert(row.end(), static_cast<std::size_t>(chosen.counts[index]), choices_[index].item);
  }
  return in_a_row(row, model_);
}

/// Keeps `most` of them at random, in their order.
void Filler::draw(std::vector<std::int64_t>& among, std::size_t most) {
  if (among.size() <= most) return;
  for (std::size_t place = 0; place < most; ++place) {
    std::swap(among[place], among[place + random_->below(among.size() - place)]);
  }
  among.resize(most);
  std::sort(among.begin(), among.end());
}

std::int64_t Filler::least_u() const {
  for (const std::size_t index : by_u_) {
    if (left_[choices_[index].item.kind] > 0) return choices_[index].u;
  }
  return INT64_MAX;
}

void Filler::draw_extents(std::int64_t room) {
  extents_.clear();
  if (!model_.three_stages) {
    extents_.push_back(room);
    return;
  }
  for (const std::size_t index : by_u_) {
    const Choice& choice = choices_[index];
    if (choice.u > room) break;
    if (left_[choice.item.kind] > 0 && (extents_.empty() || extents_.back() != choice.u))
      extents_.push_back(choice.u);
  }
  if (extents_.empty()) return;
  // The sum of two, and all the room there is, make sections with rows of more than one part.
  const std::size_t singles = extents_.size();
  draw(extents_, std::max<std::size_t>(1, care_->sections - care_->sections / 3));
  for (std::size_t pairs = 0; pairs < care_->sections / 3; ++pairs) {
    const std::int64_t sum = extents_[random_->below(std::min(singles, extents_.size()))] +
                             extents_[random_->below(std::min(singles, extents_.size()))];
    if (sum <= room) extents_.push_back(sum);
  }
  extents_.push_back(room);
  sort_unique(extents_);
}

void Filler::draw_heights(std::int64_t room, std::int64_t extent) {
  heights_.clear();
  work_ += static_cast<std::int64_t>(by_v_.size());
  for (const std::size_t index : by_v_) {
    const Choice& choice = choices_[index];
    if (choice.v > room) break;
    if (choice.u <= extent && left_[choice.item.kind] > 0 &&
        (heights_.empty() || heights_.back() != choice.v))
      heights_.push_back(choice.v);
  }
}

SpanLayout Filler::fill_span(const BoardKind& board, const Span& span, View view) {
  SpanLayout layout;
  layout.rip_first = view.rip_first;
  std::int64_t room = view.u(board, span);
  const std::int64_t v = view.v(board, span);
  list_choices(board, view, room, v);
  while (room > 0) {
    const std::int64_t least = least_u();
    if (least > room) break;
    draw_extents(room);
    best_draft_.items.clear();
    double best_density = 0;
    for (const std::int64_t extent : extents_) {
      fill_section(draft_, extent, v);
      if (draft_.items.empty()) continue;
      const double density = draft_.value / charged(draft_.extent, room, least);
      if (density <= best_density) continue;
      best_density = density;
      std::swap(draft_, best_draft_);
    }
    if (best_draft_.items.empty()) break;
    take(best_draft_.items, 1);
    room -= best_draft_.extent;
    layout.sections.push_back(section_of(best_draft_));
    if (!model_.three_stages) break;
  }
  for (const Section& section : layout.sections) {
    for (const Row& row : section)
      take(row, -1);
  }
  return layout;
}

Section Filler::section_of(const Draft& draft) {
  Section section;
  auto item = draft.items.begin();
  for (const std::size_t end : draft.ends) {
    const auto row_end = draft.items.begin() + static_cast<std::ptrdiff_t>(end);
    section.emplace_back(item, row_end);
    item = row_end;
  }
  return section;
}

void Filler::fill_section(Draft& draft, std::int64_t extent, std::int64_t v) {
  draft.items.clear();
  draft.ends.clear();
  draft.value = 0;
  draft.extent = 0;
  short_enough_.clear();
  work_ += static_cast<std::int64_t>(choices_.size());
  for (std::size_t index = 0; index < choices_.size(); ++index) {
    if (choices_[index].u <= extent) short_enough_.push_back(index);
  }
  std::int64_t room = v;
  while (room > 0) {
    draw_heights(room, extent);
    if (heights_.empty()) break;
    const std::int64_t least = heights_.front();
    draw(heights_, care_->heights);
    best_row_.items.clear();
    double best_density = 0;
    for (const std::int64_t height : heights_) {
      fill_row(row_, extent, height);
      const double density = row_.value / charged(row_.height, room, least);
      if (density <= best_density) continue;
      best_density = density;
      std::swap(row_, best_row_);
    }
    if (best_row_.items.empty()) break;
    take(best_row_.items, 1);
    room -= best_row_.height;
    draft.value += best_row_.value;
    draft.extent = std::max(draft.extent, best_row_.extent);
    draft.items.insert(draft.items.end(), best_row_.items.begin(), best_row_.items.end());
    draft.ends.push_back(draft.items.size());
  }
  take(draft.items, -1);
}

void Filler::fill_row(DraftRow& row, std::int64_t extent, std::int64_t height) {
  constexpr std::size_t kDensest = 24;
  row_items_.clear();
  row_from_.clear();
  for (const std::size_t index : short_enough_) {
    const Choice& choice = choices_[index];
    if (choice.v > height || left_[choice.item.kind] <= 0) continue;
    row_items_.push_back({choice.u, choice.value, left_[choice.item.kind]});
    row_from_.push_back(index);
    if (row_items_.size() == kDensest) break;
  }
  work_ += static_cast<std::int64_t>(row_from_.empty() ? short_enough_.size() : row_from_.back());
  row.items.clear();
  row.value = 0;
  row.height = 0;
  row.extent = 0;
  const RowChoice& chosen = row_search_.best(row_items_, extent, 0, care_->row_nodes);
  for (std::size_t index = 0; index < chosen.counts.size(); ++index) {
    const Choice& choice = choices_[row_from_[index]];
    for (int count = 0; count < chosen.counts[index]; ++count) {
      // Both ways round of one kind draw on the same number left.
      if (left_[choice.item.kind] <= 0) break;
      --left_[choice.item.kind];
      row.items.push_back(choice.item);
      row.value += choice.value;
      row.height = std::max(row.height, choice.v);
      row.extent += choice.u;
    }
  }
  take(row.items, -1);
}

}  // namespace haunch::lumber
