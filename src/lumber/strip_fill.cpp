#include "strip_fill.h"

#include <algorithm>

#include "row_patterns.h"

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
    SpanLayout best;
    if (model_.single_row) {
      best = fill_single(kind, span);
    } else {
      if (model_.u_along) best = fill_span(kind, span, View{false});
      if (model_.u_across) {
        SpanLayout other = fill_span(kind, span, View{true});
        if (value_of(other) > value_of(best)) best = std::move(other);
      }
    }
    for (const Section& section : best.sections)
      take(section, 1);
    pattern.spans.push_back(std::move(best));
  }
  count_parts(pattern);
  return pattern;
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

void Filler::take(const Row& row, int sign) {
  for (const Item& item : row)
    left_[item.kind] -= sign;
}

void Filler::take(const Section& section, int sign) {
  for (const Row& row : section)
    take(row, sign);
}

void Filler::list_choices(const BoardKind& board, View view, std::int64_t u, std::int64_t v) {
  choices_.clear();
  for (std::uint32_t kind = 0; kind < model_.parts.size(); ++kind) {
    if (left_[kind] <= 0) continue;
    const PartKind& part = model_.parts[kind];
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
}

SpanLayout Filler::fill_single(const BoardKind& board, const Span& span) {
  list_choices(board, View{false}, span.length, board.clear_width);
  std::vector<RowItem> items;
  for (const Choice& choice : choices_) {
    items.push_back({choice.u, choice.value, left_[choice.item.kind]});
  }
  const RowChoice chosen = best_row(items, span.length, 0, care_->single_nodes);
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

void Filler::draw_extents(std::int64_t room) {
  extents_.clear();
  if (!model_.three_stages) {
    extents_.push_back(room);
    return;
  }
  for (const Choice& choice : choices_) {
    if (left_[choice.item.kind] > 0 && choice.u <= room) extents_.push_back(choice.u);
  }
  sort_unique(extents_);
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
  for (const Choice& choice : choices_) {
    if (left_[choice.item.kind] > 0 && choice.v <= room && choice.u <= extent) {
      heights_.push_back(choice.v);
    }
  }
  sort_unique(heights_);
  draw(heights_, care_->heights);
}

SpanLayout Filler::fill_span(const BoardKind& board, const Span& span, View view) {
  SpanLayout layout;
  layout.rip_first = view.rip_first;
  std::int64_t room = view.u(board, span);
  const std::int64_t v = view.v(board, span);
  list_choices(board, view, room, v);
  while (room > 0) {
    std::int64_t least = INT64_MAX;
    for (const Choice& choice : choices_) {
      if (left_[choice.item.kind] > 0) least = std::min(least, choice.u);
    }
    if (least > room) break;
    draw_extents(room);
    Filled best;
    double best_density = 0;
    const std::vector<std::int64_t> extents = extents_;
    for (const std::int64_t extent : extents) {
      Filled filled = fill_section(extent, v);
      if (filled.section.empty()) continue;
      const std::int64_t charged = room - filled.extent < least ? room : filled.extent;
      const double density = filled.value / static_cast<double>(charged);
      if (density > best_density) {
        best_density = density;
        best = std::move(filled);
      }
    }
    if (best.section.empty()) break;
    take(best.section, 1);
    room -= best.extent;
    layout.sections.push_back(std::move(best.section));
    if (!model_.three_stages) break;
  }
  for (const Section& section : layout.sections)
    take(section, -1);
  return layout;
}

Filler::Filled Filler::fill_section(std::int64_t extent, std::int64_t v) {
  Filled filled;
  std::int64_t room = v;
  while (room > 0) {
    draw_heights(room, extent);
    if (heights_.empty()) break;
    std::int64_t least = INT64_MAX;
    for (const Choice& choice : choices_) {
      if (left_[choice.item.kind] > 0 && choice.u <= extent) least = std::min(least, choice.v);
    }
    FilledRow best;
    double best_density = 0;
    for (const std::int64_t height : heights_) {
      FilledRow row = fill_row(extent, height);
      const std::int64_t charged = room - row.height < least ? room : row.height;
      const double density = row.value / static_cast<double>(charged);
      if (density > best_density) {
        best_density = density;
        best = std::move(row);
      }
    }
    if (best.row.empty()) break;
    take(best.row, 1);
    room -= best.height;
    filled.value += best.value;
    std::int64_t used = 0;
    for (const Item& item : best.row) {
      for (const Choice& choice : choices_) {
        if (choice.item == item) used += choice.u;
      }
    }
    filled.extent = std::max(filled.extent, used);
    filled.section.push_back(std::move(best.row));
  }
  take(filled.section, -1);
  return filled;
}

Filler::FilledRow Filler::fill_row(std::int64_t extent, std::int64_t height) {
  constexpr std::size_t kDensest = 24;
  std::vector<RowItem> items;
  std::vector<std::size_t> from;
  for (std::size_t index = 0; index < choices_.size() && items.size() < kDensest; ++index) {
    const Choice& choice = choices_[index];
    if (choice.v > height || choice.u > extent || left_[choice.item.kind] <= 0) continue;
    items.push_back({choice.u, choice.value, left_[choice.item.kind]});
    from.push_back(index);
  }
  const RowChoice chosen = best_row(items, extent, 0, care_->row_nodes);
  FilledRow row;
  for (std::size_t index = 0; index < chosen.counts.size(); ++index) {
    const Choice& choice = choices_[from[index]];
    for (int count = 0; count < chosen.counts[index]; ++count) {
      // Both ways round of one kind draw on the same number left.
      if (left_[choice.item.kind] <= 0) break;
      --left_[choice.item.kind];
      row.row.push_back(choice.item);
      row.value += choice.value;
      row.height = std::max(row.height, choice.v);
    }
  }
  take(row.row, -1);
  return row;
}

}  // namespace haunch::lumber
