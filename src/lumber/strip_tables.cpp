#include "strip_tables.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace haunch::lumber {

namespace {

constexpr std::int64_t kMostCells = 4000;
/// Values are whole numbers: what is more is more by one, and doubles err by far less than this
/// leaves.
constexpr double kMore = 0.999;

/// The largest cell that all sizes are multiples of, where that leaves few enough cells.
std::int64_t cell_for(const std::vector<std::int64_t>& sizes, std::int64_t room, bool& exact) {
  std::int64_t common = 0;
  for (const std::int64_t size : sizes)
    common = std::gcd(common, size);
  if (common > 0 && room / common <= kMostCells) return common;
  exact = false;
  return std::max<std::int64_t>(Length::kStepsPerMm, room / kMostCells + 1);
}

/// The most value that rows stacked across a section give: depth first.
class StackSearch {
  using RowOption = StripTables::RowOption;

 public:
  void set(std::vector<RowOption> rows) {
    rows_ = std::move(rows);
    std::sort(rows_.begin(), rows_.end(), [](const RowOption& a, const RowOption& b) {
      return a.value * static_cast<double>(b.size) > b.value * static_cast<double>(a.size);
    });
  }

  /// `known`, or more where there is more. Values are whole numbers. Where looking for it takes too
  /// long, no stack gives more than it says.
  double most(std::int64_t room, double known) {
    best_ = known;
    stack_.clear();
    best_stack_.clear();
    // A share of what all searches have left, so that hard ones do not use up the others'.
    const std::int64_t most = kFewSteps + (kAllSteps - std::min(kAllSteps, steps_)) / kShare;
    left_ = most;
    descend(0, room, 0);
    steps_ += most - left_;
    return left_ > 0 ? best_ : std::max(best_, std::floor(filled(0, room) + 0.5));
  }
  std::int64_t steps() const { return steps_; }
  /// Levels of the rows that gave more than was known.
  const std::vector<std::size_t>& levels() const { return best_stack_; }

 private:
  static constexpr std::int64_t kAllSteps = 40'000'000;
  static constexpr std::int64_t kFewSteps = 2'000;
  static constexpr std::int64_t kShare = 40;

  /// What the room would give filled with the densest row from `index` on.
  double filled(std::size_t index, std::int64_t room) const {
    if (index >= rows_.size()) return 0;
    return rows_[index].value * static_cast<double>(room) / static_cast<double>(rows_[index].size);
  }

  void descend(std::size_t index, std::int64_t room, double value) {
    if (value > best_) {
      best_ = value;
      best_stack_ = stack_;
    }
    for (; index < rows_.size(); ++index) {
      const RowOption& row = rows_[index];
      if (left_ == 0 || value + filled(index, room) < best_ + kMore) return;
      --left_;
      if (row.size > room) continue;
      stack_.push_back(row.level);
      descend(index, room - row.size, value + row.value);
      stack_.pop_back();
    }
  }

  std::vector<RowOption> rows_;
  std::vector<std::size_t> stack_, best_stack_;
  double best_ = 0;
  std::int64_t left_ = 0, steps_ = 0;
};

}  // namespace

StripTables::StripTables(const Model& model, View view, Boards boards, GridRound round)
    : model_(model), view_(view), round_(round) {
  std::int64_t most_u = 0;
  std::int64_t most_v = 0;
  for (const BoardKind& board : model.boards) {
    if (!boards.hold(board)) continue;
    for (const Span& span : board.spans) {
      most_u = std::max(most_u, view.u(board, span));
      most_v = std::max(most_v, view.v(board, span));
    }
  }
  for (std::uint32_t kind = 0; kind < model.parts.size(); ++kind) {
    const PartKind& part = model.parts[kind];
    if (part.thickness != boards.thickness) continue;
    for (const bool turned : {false, true}) {
      if (turned && ((boards.grain && !part.turnable) || part.length == part.width)) continue;
      const Place place{
          .item = {kind, turned}, .u = view.u(part, turned), .v = view.v(part, turned), .value = 0};
      if (place.u <= most_u && place.v <= most_v) places_.push_back(place);
    }
  }
  choose_cells(most_u, most_v);
  for (const BoardKind& board : model.boards) {
    if (!boards.hold(board)) continue;
    for (const Span& span : board.spans)
      spans_v_.push_back(span_cells(view.v(board, span), v_));
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
  u_.cell = cell_for(sizes_u, most_u, u_.exact);
  v_.cell = cell_for(sizes_v, most_v, v_.exact);
  for (Place& place : places_) {
    place.u = part_cells(place.u, u_);
    place.v = part_cells(place.v, v_);
  }
  std::stable_sort(places_.begin(), places_.end(),
                   [](const Place& a, const Place& b) { return a.v < b.v; });
  for (std::size_t index = 0; index < places_.size(); ++index) {
    if (index + 1 == places_.size() || places_[index + 1].v != places_[index].v)
      level_end_.push_back(index + 1);
  }
  most_u_ = span_cells(most_u, u_);
  most_v_ = span_cells(most_v, v_);
}

std::int64_t StripTables::part_cells(std::int64_t steps, const Grid& grid) const {
  if (round_ == GridRound::up) return (steps + grid.cell - 1) / grid.cell;
  return std::max<std::int64_t>(1, steps / grid.cell);
}

/// Where all sizes are whole cells, what is left over of a span is of no use to the bound either.
std::int64_t StripTables::span_cells(std::int64_t steps, const Grid& grid) const {
  if (round_ == GridRound::up || grid.exact) return steps / grid.cell;
  return (steps + grid.cell - 1) / grid.cell;
}

std::size_t StripTables::across_index(std::int64_t v) const {
  return static_cast<std::size_t>(std::lower_bound(spans_v_.begin(), spans_v_.end(), v) -
                                  spans_v_.begin());
}

void StripTables::price(const std::vector<double>& values) {
  for (Place& place : places_)
    place.value = values[place.item.kind];
  price_rows();
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
      const auto size = static_cast<std::size_t>(place.u);
      if (place.value <= most[size]) continue;
      for (std::size_t x = size; x < cells; ++x)
        most[x] = std::max(most[x], most[x - size] + place.value);
    }
    rows_[level] = most;
  }
  work_ += static_cast<std::int64_t>(cells * (places_.size() + 2 * level_end_.size()));
}

/// What a section may be worth for each cell across it, at most, by its extent; 0 where no row has
/// more than at an extent less by one.
std::vector<double> StripTables::densities() const {
  std::vector<double> densest(static_cast<std::size_t>(most_u_) + 1, 0.0);
  std::vector<bool> more(densest.size(), false);
  for (std::size_t level = 0; level < rows_.size(); ++level) {
    const std::vector<double>& row = rows_[level];
    const double per_cell = 1 / static_cast<double>(places_[level_end_[level] - 1].v);
    for (std::size_t extent = 1; extent < densest.size(); ++extent) {
      densest[extent] = std::max(densest[extent], row[extent] * per_cell);
      if (row[extent] > row[extent - 1]) more[extent] = true;
    }
  }
  for (std::size_t extent = 0; extent < densest.size(); ++extent)
    if (!more[extent]) densest[extent] = 0;
  return densest;
}

/// Sections from short to long: one is of use when it is worth more than shorter ones in its
/// place.
void StripTables::price_spans() {
  const std::size_t cells = static_cast<std::size_t>(most_u_) + 1;
  const std::vector<double> densest = densities();
  spans_.assign(spans_v_.size(), std::vector<double>(cells, 0.0));
  section_options_.assign(spans_v_.size(), {});
  StackSearch search;
  for (std::size_t extent = 1; extent < cells; ++extent) {
    bool set = false;
    for (std::size_t index = 0; index < spans_v_.size(); ++index) {
      std::vector<double>& most = spans_[index];
      if (!model_.three_stages) most[extent] = most[extent - 1];
      const double known = most[extent];
      if (densest[extent] * static_cast<double>(spans_v_[index]) < known + kMore) continue;
      if (!set) search.set(row_options(extent));
      set = true;
      const double value = search.most(spans_v_[index], known);
      if (value <= known) continue;
      section_options_[index].push_back({extent, value, search.levels()});
      const std::size_t last = model_.three_stages ? cells - 1 : extent;
      for (std::size_t x = extent; x <= last; ++x)
        most[x] = std::max(most[x], most[x - extent] + value);
      work_ += static_cast<std::int64_t>(last - extent);
    }
    if (set) work_ += static_cast<std::int64_t>(rows_.size());
  }
  constexpr std::int64_t kStepWork = 4;
  work_ += kStepWork * search.steps();
}

/// Rows of an extent, those that a lower one is worth as much as left out.
std::vector<StripTables::RowOption> StripTables::row_options(std::size_t extent) const {
  std::vector<RowOption> rows;
  double last = 0;
  for (std::size_t level = 0; level < rows_.size(); ++level) {
    const double value = rows_[level][extent];
    if (value > last) rows.push_back({places_[level_end_[level] - 1].v, value, level});
    last = value;
  }
  return rows;
}

double StripTables::most(const BoardKind& board, const Span& span) const {
  const std::size_t across = across_index(span_cells(view_.v(board, span), v_));
  return spans_[across][static_cast<std::size_t>(span_cells(view_.u(board, span), u_))];
}

std::vector<SpanLayout> StripTables::layouts(const BoardKind& board, const Span& span,
                                             std::size_t count) const {
  const std::size_t across = across_index(span_cells(view_.v(board, span), v_));
  const auto room = static_cast<std::size_t>(span_cells(view_.u(board, span), u_));
  const std::vector<double>& most = spans_[across];
  std::vector<std::pair<double, const Option*>> first;
  for (const Option& option : section_options_[across]) {
    if (option.extent > room) continue;
    const double rest = model_.three_stages ? most[room - option.extent] : 0;
    first.emplace_back(option.value + rest, &option);
  }
  std::stable_sort(first.begin(), first.end(),
                   [](const auto& a, const auto& b) { return a.first > b.first; });
  first.resize(std::min(count, first.size()));
  std::vector<SpanLayout> layouts;
  for (const auto& [value, option] : first) {
    layouts.push_back({view_.rip_first, {section_of(*option)}});
    if (model_.three_stages) add_sections(layouts.back(), across, room - option->extent);
    // What is only known to be worth so much at most may have no rows.
    std::erase_if(layouts.back().sections, [](const Section& section) { return section.empty(); });
  }
  if (layouts.empty()) layouts.push_back({view_.rip_first, {}});
  return layouts;
}

Section StripTables::section_of(const Option& option) const {
  Section section;
  for (const std::size_t level : option.levels)
    section.push_back(row(level, option.extent));
  return section;
}

/// The sections that make the room worth what it can be.
void StripTables::add_sections(SpanLayout& layout, std::size_t across, std::size_t room) const {
  const std::vector<double>& most = spans_[across];
  const std::vector<Option>& options = section_options_[across];
  while (most[room] > 0) {
    const auto taken = std::find_if(options.begin(), options.end(), [&](const Option& option) {
      return option.extent <= room && most[room - option.extent] + option.value == most[room];
    });
    if (taken == options.end()) break;
    layout.sections.push_back(section_of(*taken));
    room -= taken->extent;
  }
}

Row StripTables::row(std::size_t level, std::size_t extent) const {
  Row row;
  const std::vector<double>& most = rows_[level];
  auto room = static_cast<std::int64_t>(extent);
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
