#include "shortage.h"

#include <algorithm>
#include <cmath>

namespace haunch::lumber {

namespace {

constexpr auto kSquareMm =
    static_cast<double>(Length::kStepsPerMm) * static_cast<double>(Length::kStepsPerMm);

double enlarged_area(const PartKind& part) {
  return static_cast<double>(part.length) * static_cast<double>(part.width);
}

/// No more than this many of the part, and of nothing else, come from one board.
std::int64_t most_of(const PartKind& part, const BoardKind& board) {
  std::int64_t most = 0;
  for (const Span& span : board.spans) {
    if (board.grain && !part.turnable) {
      most += (span.length / part.length) * (board.clear_width / part.width);
    } else {
      const double room = static_cast<double>(span.length) * static_cast<double>(board.clear_width);
      most += static_cast<std::int64_t>(room / enlarged_area(part) * (1 + 1e-12));
    }
  }
  return most;
}

/// Over all boards; nothing when some that it fits come without limit.
std::optional<std::int64_t> most_of(const PartKind& part, const Model& model) {
  std::int64_t most = 0;
  for (const BoardKind& board : model.boards) {
    if (!fits_some_way(part, board)) continue;
    if (!board.limit) return {};
    most += *board.limit * most_of(part, board);
  }
  return most;
}

std::optional<Shortage> by_area(const Model& model) {
  double room = 0;
  for (const BoardKind& board : model.boards) {
    if (!board.limit) return {};
    room += static_cast<double>(*board.limit) * board.clear_area();
  }
  double need = 0;
  for (const PartKind& part : model.parts)
    need += static_cast<double>(part.demand()) * enlarged_area(part);
  if (need <= room * (1 + 1e-12)) return {};
  return Shortage{.kind = Shortage::Kind::area,
                  .want = 0,
                  .wanted = static_cast<std::int64_t>(std::ceil(need / kSquareMm)),
                  .at_most = static_cast<std::int64_t>(std::floor(room / kSquareMm))};
}

}  // namespace

std::vector<Unplaced> unplaced_of(const std::vector<std::size_t>& left, const Model& model,
                                  const CuttingOrder& order) {
  Length end_trim;
  Length edge_trim;
  for (std::size_t index = 0; index < order.stock.size(); ++index) {
    const Stock& stock = order.stock[index];
    end_trim = index == 0 ? stock.end_trim : std::min(end_trim, stock.end_trim);
    edge_trim = index == 0 ? stock.edge_trim : std::min(edge_trim, stock.edge_trim);
  }
  std::vector<Unplaced> unplaced;
  const auto add = [&](std::size_t want, Lack why) {
    unplaced.push_back({.want = want,
                        .why = why,
                        .stock_length = order.wants[want].length + end_trim * 2,
                        .stock_width = order.wants[want].width + edge_trim * 2});
  };
  for (const std::size_t want : model.too_big)
    add(want, Lack::size);
  for (const std::size_t want : left)
    add(want, Lack::count);
  std::sort(unplaced.begin(), unplaced.end(),
            [](const Unplaced& a, const Unplaced& b) { return a.want < b.want; });
  return unplaced;
}

Shortage shortage_of(const Solution& solution, const Model& model, bool proven_short) {
  for (std::size_t kind = 0; kind < model.parts.size(); ++kind) {
    if (solution.missing[kind] <= 0) continue;
    const PartKind& part = model.parts[kind];
    const auto most = most_of(part, model);
    if (most && *most < part.demand()) {
      return {.kind = Shortage::Kind::pieces,
              .want = part.wants.front(),
              .wanted = part.demand(),
              .at_most = *most};
    }
  }
  if (const auto area = by_area(model)) return *area;
  return {.kind = proven_short ? Shortage::Kind::linear : Shortage::Kind::unproven,
          .want = 0,
          .wanted = 0,
          .at_most = 0};
}

}  // namespace haunch::lumber
