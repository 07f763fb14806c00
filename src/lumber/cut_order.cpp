#include "cut_order.h"

#include <algorithm>
#include <utility>

namespace haunch::lumber {

namespace {

Length low_of(const Spot& spot, StepKind kind) {
  return kind == StepKind::crosscut ? spot.x : spot.y;
}

Length size_of(const Spot& spot, StepKind kind) {
  return kind == StepKind::crosscut ? spot.length : spot.width;
}

Length high_of(const Spot& spot, StepKind kind) {
  return low_of(spot, kind) + size_of(spot, kind);
}

Spot between(const Spot& spot, StepKind kind, Length low, Length high) {
  Spot part = spot;
  (kind == StepKind::crosscut ? part.x : part.y) = low;
  (kind == StepKind::crosscut ? part.length : part.width) = high - low;
  return part;
}

/// A board on the saw.
class Bench {
 public:
  Bench(const Model& model, const CuttingOrder& order, Supply& supply, BoardPlan& plan)
      : model_(model), order_(order), supply_(supply), plan_(plan) {}

  void cut(const Pattern& pattern);

 private:
  Spot cut_off(Spot& piece, StepKind kind, Length place, StepReason reason);
  void cut_away_below(Spot& piece, StepKind kind, Length place, StepReason reason);
  void keep(const Spot& piece);
  Spot trimmed(const BoardKind& board);
  bool is_worth_cutting(const BoardKind& board, const Span& span, const SpanLayout& layout) const;
  void cut_span(Spot piece, const SpanLayout& layout);
  void cut_section(Spot piece, const Section& section, View view);
  void cut_row(Spot piece, const Row& row, View view);

  StepKind along_u(View view) const { return view.rip_first ? StepKind::rip : StepKind::crosscut; }
  StepKind along_v(View view) const { return view.rip_first ? StepKind::crosscut : StepKind::rip; }
  Length sawn(std::int64_t enlarged) const { return Length::from_steps(enlarged - model_.kerf); }

  const Model& model_;
  const CuttingOrder& order_;
  Supply& supply_;
  BoardPlan& plan_;
};

/// What lies below `place`; `piece` is then what lies above the blade.
Spot Bench::cut_off(Spot& piece, StepKind kind, Length place, StepReason reason) {
  const Length end = high_of(piece, kind);
  const Spot below = between(piece, kind, low_of(piece, kind), place);
  const Length beyond = std::min(place + order_.saw.kerf, end);
  if (place < end) {
    plan_.steps.push_back(
        {.kind = kind, .reason = reason, .piece = piece, .from = place, .to = beyond});
  }
  piece = between(piece, kind, beyond, end);
  return below;
}

/// `piece` is then what lies above `place`.
void Bench::cut_away_below(Spot& piece, StepKind kind, Length place, StepReason reason) {
  const Length start = low_of(piece, kind);
  if (place <= start) return;
  const Length from = std::max(start, place - order_.saw.kerf);
  plan_.steps.push_back(
      {.kind = kind, .reason = reason, .piece = piece, .from = from, .to = place});
  piece = between(piece, kind, place, high_of(piece, kind));
}

void Bench::keep(const Spot& piece) {
  const Saw& saw = order_.saw;
  if (!saw.keep_offcuts || piece.length <= Length() || piece.width <= Length()) return;
  if (piece.length >= saw.offcut_length && piece.width >= saw.offcut_width) {
    plan_.offcuts.push_back(piece);
  }
}

Spot Bench::trimmed(const BoardKind& board) {
  const Stock& stock = order_.stock[plan_.stock];
  Spot piece{.x = {}, .y = {}, .length = board.length, .width = board.width};
  cut_away_below(piece, StepKind::crosscut, stock.end_trim, StepReason::trim);
  piece = cut_off(piece, StepKind::crosscut, board.length - stock.end_trim, StepReason::trim);
  cut_away_below(piece, StepKind::rip, stock.edge_trim, StepReason::trim);
  return cut_off(piece, StepKind::rip, board.width - stock.edge_trim, StepReason::trim);
}

void Bench::cut(const Pattern& pattern) {
  const BoardKind& board = model_.boards[pattern.board];
  Spot rest = trimmed(board);
  for (std::size_t index = 0; index < board.spans.size(); ++index) {
    const Span& span = board.spans[index];
    if (!is_worth_cutting(board, span, pattern.spans[index])) continue;
    const Length start = Length::from_steps(span.start);
    cut_away_below(rest, StepKind::crosscut, start, StepReason::defect);
    const Spot clear =
        cut_off(rest, StepKind::crosscut, start + sawn(span.length), StepReason::defect);
    cut_span(clear, pattern.spans[index]);
  }
}

/// Where it yields neither parts nor an offcut, it is left as scrap with the defects beside it.
bool Bench::is_worth_cutting(const BoardKind& board, const Span& span,
                             const SpanLayout& layout) const {
  const Saw& saw = order_.saw;
  return !layout.sections.empty() || (saw.keep_offcuts && sawn(span.length) >= saw.offcut_length &&
                                      sawn(board.clear_width) >= saw.offcut_width);
}

void Bench::cut_span(Spot piece, const SpanLayout& layout) {
  const View view{layout.rip_first};
  for (const Section& section : layout.sections) {
    if (!model_.three_stages) {
      cut_section(piece, section, view);
      return;
    }
    const Length end = low_of(piece, along_u(view)) + sawn(extent(section, model_, view));
    cut_section(cut_off(piece, along_u(view), end, StepReason::section), section, view);
  }
  keep(piece);
}

void Bench::cut_section(Spot piece, const Section& section, View view) {
  for (const Row& row : section) {
    const Length end = low_of(piece, along_v(view)) + sawn(height(row, model_, view));
    cut_row(cut_off(piece, along_v(view), end, StepReason::strip), row, view);
  }
  keep(piece);
}

void Bench::cut_row(Spot piece, const Row& row, View view) {
  for (const Item& item : row) {
    const PartKind& part = model_.parts[item.kind];
    const Length end = low_of(piece, along_u(view)) + sawn(view.u(part, item.turned));
    Spot cell = cut_off(piece, along_u(view), end, StepReason::part);
    const Length edge = low_of(cell, along_v(view)) + sawn(view.v(part, item.turned));
    const Spot spot = cut_off(cell, along_v(view), edge, StepReason::to_size);
    plan_.cuts.push_back(
        {.want = supply_.next_want(item.kind), .spot = spot, .turned = item.turned});
    keep(cell);
  }
  keep(piece);
}

Area area_of(const Spot& spot) {
  return lumber::area_of(spot.length, spot.width);
}

Area dust_of(const Step& step) {
  const Length blade = step.to - step.from;
  return lumber::area_of(blade,
                         step.kind == StepKind::crosscut ? step.piece.width : step.piece.length);
}

Area trim_of(const Stock& stock) {
  const Length inside_length = stock.length - stock.end_trim * 2;
  const Length inside_width = stock.width - stock.edge_trim * 2;
  return lumber::area_of(stock.length, stock.width) - lumber::area_of(inside_length, inside_width);
}

}  // namespace

Supply::Supply(const Model& model, WantOrder wants)
    : model_(model),
      wants_(std::move(wants)),
      boards_out_(model.boards.size()),
      wants_out_(model.parts.size()) {}

Supply::Board Supply::next_board(std::size_t board_kind) {
  std::int64_t copy = boards_out_[board_kind]++;
  for (const Source& source : model_.boards[board_kind].sources) {
    if (!source.count || copy < *source.count) return {source.stock, copy};
    copy -= *source.count;
  }
  throw PlanFault("more boards of one kind than there are");
}

std::size_t Supply::next_want(std::size_t part_kind) {
  const auto& wants = wants_[part_kind];
  const std::size_t index = wants_out_[part_kind]++;
  if (index >= wants.size()) throw PlanFault("more parts of one kind than are wanted");
  return wants[index];
}

std::vector<std::size_t> Supply::wants_left() const {
  std::vector<std::size_t> left;
  for (std::size_t kind = 0; kind < wants_.size(); ++kind) {
    const auto& wants = wants_[kind];
    left.insert(left.end(), wants.begin() + static_cast<std::ptrdiff_t>(wants_out_[kind]),
                wants.end());
  }
  std::sort(left.begin(), left.end());
  return left;
}

BoardPlan cut_up(const Pattern& pattern, const Model& model, const CuttingOrder& order,
                 Supply& supply) {
  const Supply::Board board = supply.next_board(pattern.board);
  BoardPlan plan;
  plan.stock = board.stock;
  plan.copy = board.copy;
  Bench(model, order, supply, plan).cut(pattern);
  return plan;
}

Totals totals_of(const std::vector<BoardPlan>& boards, const CuttingOrder& order) {
  Totals totals;
  for (const BoardPlan& board : boards) {
    const Stock& stock = order.stock[board.stock];
    const Area whole = lumber::area_of(stock.length, stock.width);
    ++totals.boards;
    totals.area_used += whole;
    if (stock.bought) {
      ++totals.boards_bought;
      totals.cost += stock.cost;
      totals.area_bought += whole;
    }
    totals.trim += trim_of(stock);
    for (const Cut& cut : board.cuts)
      totals.parts += area_of(cut.spot);
    for (const Spot& offcut : board.offcuts)
      totals.offcuts += area_of(offcut);
    for (const Step& step : board.steps) {
      totals.kerf += dust_of(step);
      if (step.reason == StepReason::trim) totals.trim -= dust_of(step);
    }
  }
  totals.scrap = totals.area_used - totals.parts - totals.kerf - totals.trim - totals.offcuts;
  return totals;
}

}  // namespace haunch::lumber
