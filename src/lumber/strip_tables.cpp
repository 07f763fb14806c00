#include "strip_tables.h"

#include <algorithm>
#include <numeric>

namespace haunch::lumber {

namespace {

constexpr std::int64_t kMostCells = 4000;

/// The largest cell that all sizes are multiples of, where that leaves few enough cells.
std::int64_t cell_for(const std::vector<std::int64_t>& sizes, std::int64_t room, bool& exact) {
  std::int64_t common = 0;
  for (const std::int64_t size : sizes)
    common = std::gcd(common, size);
  if (common > 0 && room / common <= kMostCells) return common;
  exact = false;
  return std::max<std::int64_t>(Length::kStepsPerMm, room / kMostCells + 1);
}

}  // namespace

StripTables::StripTables(const Model& model, View view, bool grain, GridRound round)
    : model_(model), view_(view), round_(round) {
  std::int64_t most_u = 0;
  std::int64_t most_v = 0;
  for (const BoardKind& board : model.boards) {
    if (board.grain != grain) continue;
    for (const Span& span : board.spans) {
      most_u = std::max(most_u, view.u(board, span));
      most_v = std::max(most_v, view.v(board, span));
    }
  }
  for (std::uint32_t kind = 0; kind < model.parts.size(); ++kind) {
    const PartKind& part = model.parts[kind];
    for (const bool turned : {false, true}) {
      if (turned && ((grain && !part.turnable) || part.length == part.width)) continue;
      const Place place{
          .item = {kind, turned}, .u = view.u(part, turned), .v = view.v(part, turned), .value = 0};
      if (place.u <= most_u && place.v <= most_v) places_.push_back(place);
    }
  }
  choose_cells(most_u, most_v);
  for (const BoardKind& board : model.boards) {
    if (board.grain != grain) continue;
    for (const Span& span : board.spans)
      spans_v_.push_back(span_cells(view.v(board, span), cell_v_));
  }
  std::sort(spans_v_.begin(), spans_v_.end());
  spans_v_.erase(std::unique(spans_v_.begin(), spans_v_.end()), spans_v_.end());
}

void StripTables::choose_cells(std::int64_t most_u, std::int64_t most_v) {
  std::vector<std::int64_t> sizes_u;
  std::vector<std::int64_t> sizes_v;
  for (const Place& place : places_) {
    sizes_u.push_back(place.u);
    sizes_v.push_back(place.v);
  }
  exact_ = true;
  cell_u_ = cell_for(sizes_u, most_u, exact_);
  cell_v_ = cell_for(sizes_v, most_v, exact_);
  for (Place& place : places_) {
    place.u = part_cells(place.u, cell_u_);
    place.v = part_cells(place.v, cell_v_);
  }
  std::stable_sort(places_.begin(), places_.end(),
                   [](const Place& a, const Place& b) { return a.v < b.v; });
  for (std::size_t index = 0; index < places_.size(); ++index) {
    if (index + 1 == places_.size() || places_[index + 1].v != places_[index].v)
      level_end_.push_back(index + 1);
  }
  most_u_ = span_cells(most_u, cell_u_);
  most_v_ = span_cells(most_v, cell_v_);
}

std::int64_t StripTables::part_cells(std::int64_t steps, std::int64_t cell) const {
  if (round_ == GridRound::up) return (steps + cell - 1) / cell;
  return std::max<std::int64_t>(1, steps / cell);
}

/// Where all sizes are whole cells, what is left over of a span is of no use to the bound either.
std::int64_t StripTables::span_cells(std::int64_t steps, std::int64_t cell) const {
  if (round_ == GridRound::up || exact_) return steps / cell;
  return (steps + cell - 1) / cell;
}

std::size_t StripTables::across_index(std::int64_t v) const {
  return static_cast<std::size_t>(std::lower_bound(spans_v_.begin(), spans_v_.end(), v) -
                                  spans_v_.begin());
}

void StripTables::price(const std::vector<double>& values) {
  for (Place& place : places_)
    place.value = values[place.item.kind];
  price_rows();
  price_sections();
  price_spans();
}

void StripTables::price_rows() {
  const auto cells = static_cast<std::size_t>(most_u_) + 1;
  rows_.assign(level_end_.size(), {});
  std::vector<double> most(cells, 0.0);
  std::size_t index = 0;
  for (std::size_t level = 0; level < level_end_.size(); ++level) {
    for (; index < level_end_[level]; ++index) {
      const Place& place = places_[index];
      if (place.value <= 0) continue;
      const auto size = static_cast<std::size_t>(place.u);
      for (std::size_t x = size; x < cells; ++x)
        most[x] = std::max(most[x], most[x - size] + place.value);
    }
    rows_[level] = most;
  }
}

void StripTables::drop_dominated(std::vector<Option>& options) {
  // Options grow in size; one is of no use when smaller ones, repeated, give as much in its room.
  std::vector<Option> kept;
  for (const Option& option : options) {
    const bool useless = std::any_of(kept.begin(), kept.end(), [&option](const Option& other) {
      const std::int64_t times = option.size / other.size;
      return static_cast<double>(times) * other.value >= option.value;
    });
    if (!useless) kept.push_back(option);
  }
  options = std::move(kept);
}

std::vector<StripTables::Option> StripTables::row_options(std::int64_t extent) const {
  std::vector<Option> options;
  for (std::size_t level = 0; level < rows_.size(); ++level) {
    const double value = rows_[level][static_cast<std::size_t>(extent)];
    if (value > 0) options.push_back({places_[level_end_[level] - 1].v, value, level});
  }
  drop_dominated(options);
  return options;
}

std::vector<double> StripTables::knapsack(const std::vector<Option>& options, std::int64_t room) {
  std::vector<double> most(static_cast<std::size_t>(room) + 1, 0.0);
  for (const Option& option : options) {
    const auto size = static_cast<std::size_t>(option.size);
    for (std::size_t x = size; x < most.size(); ++x)
      most[x] = std::max(most[x], most[x - size] + option.value);
  }
  return most;
}

void StripTables::price_sections() {
  const auto cells = static_cast<std::size_t>(most_u_) + 1;
  sections_.assign(spans_v_.size(), std::vector<double>(cells, 0.0));
  for (std::size_t extent = 1; extent < cells; ++extent) {
    const bool same = std::all_of(rows_.begin(), rows_.end(), [extent](const auto& row) {
      return row[extent] == row[extent - 1];
    });
    const std::vector<double> most =
        same ? std::vector<double>()
             : knapsack(row_options(static_cast<std::int64_t>(extent)), most_v_);
    for (std::size_t index = 0; index < spans_v_.size(); ++index) {
      sections_[index][extent] =
          same ? sections_[index][extent - 1] : most[static_cast<std::size_t>(spans_v_[index])];
    }
  }
}

void StripTables::price_spans() {
  spans_ = sections_;
  section_options_.assign(spans_v_.size(), {});
  if (!model_.three_stages) return;
  for (std::size_t index = 0; index < spans_v_.size(); ++index) {
    std::vector<Option> options;
    for (std::size_t extent = 1; extent < sections_[index].size(); ++extent) {
      const double value = sections_[index][extent];
      if (value > sections_[index][extent - 1])
        options.push_back({static_cast<std::int64_t>(extent), value, extent});
    }
    drop_dominated(options);
    spans_[index] = knapsack(options, most_u_);
    section_options_[index] = std::move(options);
  }
}

double StripTables::most(const BoardKind& board, const Span& span) const {
  const std::size_t across = across_index(span_cells(view_.v(board, span), cell_v_));
  return spans_[across][static_cast<std::size_t>(span_cells(view_.u(board, span), cell_u_))];
}

SpanLayout StripTables::layout(const BoardKind& board, const Span& span) const {
  SpanLayout layout;
  layout.rip_first = view_.rip_first;
  const std::int64_t v = span_cells(view_.v(board, span), cell_v_);
  const std::size_t across = across_index(v);
  std::int64_t room = span_cells(view_.u(board, span), cell_u_);
  if (!model_.three_stages) {
    if (spans_[across][static_cast<std::size_t>(room)] > 0)
      layout.sections.push_back(section(room, v));
    return layout;
  }
  const std::vector<double>& most = spans_[across];
  while (most[static_cast<std::size_t>(room)] > 0) {
    const double value = most[static_cast<std::size_t>(room)];
    const auto& options = section_options_[across];
    const auto taken = std::find_if(options.begin(), options.end(), [&](const Option& option) {
      return option.size <= room &&
             most[static_cast<std::size_t>(room - option.size)] + option.value == value;
    });
    if (taken == options.end()) break;
    layout.sections.push_back(section(taken->size, v));
    room -= taken->size;
  }
  return layout;
}

Section StripTables::section(std::int64_t extent, std::int64_t v) const {
  Section section;
  const std::vector<Option> options = row_options(extent);
  const std::vector<double> most = knapsack(options, v);
  std::int64_t room = v;
  while (most[static_cast<std::size_t>(room)] > 0) {
    const double value = most[static_cast<std::size_t>(room)];
    const auto taken = std::find_if(options.begin(), options.end(), [&](const Option& option) {
      return option.size <= room &&
             most[static_cast<std::size_t>(room - option.size)] + option.value == value;
    });
    if (taken == options.end()) break;
    section.push_back(row(taken->from, extent));
    room -= taken->size;
  }
  return section;
}

Row StripTables::row(std::size_t level, std::int64_t extent) const {
  Row row;
  const std::vector<double>& most = rows_[level];
  std::int64_t room = extent;
  while (most[static_cast<std::size_t>(room)] > 0) {
    const double value = most[static_cast<std::size_t>(room)];
    std::size_t index = level_end_[level];
    while (index-- > 0) {
      const Place& place = places_[index];
      if (place.value > 0 && place.u <= room &&
          most[static_cast<std::size_t>(room - place.u)] + place.value == value) {
        break;
      }
    }
    if (index == SIZE_MAX) break;
    row.push_back(places_[index].item);
    room -= places_[index].u;
  }
  return row;
}

}  // namespace haunch::lumber
