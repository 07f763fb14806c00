#include "every_way.h"

#include <algorithm>
#include <map>
#include <tuple>
#include <utility>

#include "column_generation.h"
#include "cover.h"

namespace haunch::lumber {

namespace {

/// What the parts need at least by area, or by length where all lie in a row.
void bound_by_area(Bounds& bounds, const Model& model, const std::vector<Choice>& choices) {
  std::vector<Carrier> carriers;
  std::vector<Carrier> by_area;
  for (const BoardKind& board : model.boards) {
    const double value = model.single_row ? row_room(board) : board_area(board);
    carriers.push_back({board.price, value, board.limit});
    by_area.push_back({floor_square_mm(board.area()), value, board.limit});
  }
  std::vector<double> values;
  for (const PartKind& part : model.parts)
    values.push_back(model.single_row ? row_need(part) : part_area(part));
  const double need = least_need(choices, values);
  const Cover covered = cover(carriers, need);
  bounds.area = covered.parts_of_boards;
  bounds.whole_boards = covered.whole_boards;
  bounds.least_area_square_mm = cover(by_area, need).parts_of_boards;
}

/// The model of boards and pieces, and which pieces each part may be made of.
struct Sized {
  Model model;
  std::vector<Choice> choices;
  Rest rest;

  Sized(const Model& yard, const std::vector<PartWays>& parts) : model(yard) {
    model.parts.clear();
    for (const PartWays& part : parts)
      add(part);
    fit_boards(model);
    for (const BoardKind& board : model.boards)
      rest.boards.push_back(board.limit.value_or(pieces_));
  }

 private:
  void add(const PartWays& part) {
    Choice choice{static_cast<double>(part.parts), {}};
    for (const PieceWay& way : part.ways) {
      const auto [known, is_new] = kinds_.try_emplace(
          {way.thickness, way.length, way.width, way.turnable}, model.parts.size());
      if (is_new) {
        model.parts.push_back({.length = way.length,
                               .width = way.width,
                               .turnable = way.turnable,
                               .thickness = way.thickness,
                               .wants = {}});
        rest.parts.push_back(0);
      }
      choice.ways.push_back({known->second, static_cast<double>(way.pieces)});
      rest.parts[known->second] += static_cast<int>(part.parts * way.pieces);
      pieces_ += part.parts * way.pieces;
    }
    choices.push_back(std::move(choice));
  }

  std::map<std::tuple<std::size_t, std::int64_t, std::int64_t, bool>, std::size_t> kinds_;
  std::int64_t pieces_ = 0;
};

/// The best that the latest proofs give.
void take_proofs(Bounds& bounds, const Sized& sized, const ColumnGeneration& columns) {
  constexpr std::size_t kLast = 6;
  const std::vector<Proof>& proofs = columns.proofs();
  for (std::size_t index = proofs.size() - std::min(kLast, proofs.size()); index < proofs.size();
       ++index) {
    const double need = least_need(sized.choices, proofs[index].values);
    const DualBound bound = dual_bound(sized.model, need, proofs[index].at_most);
    bounds.linear = std::max(bounds.linear.value_or(0), bound.linear);
    bounds.dual_whole = std::max(bounds.dual_whole.value_or(0), bound.dual_whole);
  }
}

/// Slice after slice of work, each going on where the one before left off: so a greater effort
/// proves all that a lesser one does. A slice is longer where there are many `sizes`.
void bound_by_columns(Bounds& bounds, const Sized& sized, std::size_t sizes, int effort) {
  constexpr int kSteps = 300;
  constexpr int kRowPricings = 200;
  constexpr int kPricings = 30;
  constexpr std::int64_t kWork = 400'000'000;
  constexpr std::size_t kManySizes = 100;
  const int many = static_cast<int>(std::min<std::size_t>(10, 1 + sizes / kManySizes));
  const int pricings = many * (sized.model.single_row ? kRowPricings : kPricings);
  ColumnGeneration columns(sized.model, 1, sized.choices);
  for (int slice = 0; slice < effort; ++slice) {
    columns.allow_work(std::int64_t{slice + 1} * many * kWork);
    const Relaxation relaxation = columns.solve(sized.rest, many * kSteps, pricings);
    take_proofs(bounds, sized, columns);
    if (relaxation.finished) return;
  }
}

/// Of ways that no board is large enough for nothing is lost by leaving them out.
void leave_out_misfits(std::vector<PartWays>& parts, const Model& yard) {
  for (PartWays& part : parts) {
    std::erase_if(part.ways, [&yard](const PieceWay& way) {
      const PartKind kind{.length = way.length,
                          .width = way.width,
                          .turnable = way.turnable,
                          .thickness = way.thickness,
                          .wants = {}};
      return std::none_of(yard.boards.begin(), yard.boards.end(), [&kind](const BoardKind& board) {
        return board.limit != 0 && fits_some_way(kind, board);
      });
    });
  }
  std::erase_if(parts, [](const PartWays& part) { return part.ways.empty() || part.parts <= 0; });
}

}  // namespace

Bounds bound_by_sizes(const Model& yard, std::vector<PartWays> parts, int effort) {
  constexpr std::size_t kMostSizes = 240;
  constexpr std::size_t kMostBoards = 300;
  leave_out_misfits(parts, yard);
  Bounds bounds;
  if (parts.empty()) return bounds;
  const Sized all(yard, parts);
  bound_by_area(bounds, all.model, all.choices);
  const std::size_t sizes = all.model.parts.size();
  const std::vector<PartWays> fewer = fewer_sizes(std::move(parts), kMostSizes);
  if (!fewer.empty() && all.model.boards.size() <= kMostBoards) {
    bound_by_columns(bounds, Sized(yard, fewer), sizes, effort);
  }
  settle_best(bounds);
  return bounds;
}

Bounds bounds_of_every_way(const WaysOrder& order) {
  const Model yard = yard_of(order.stock, order.saw.kerf, order.stages, order.measure);
  std::vector<PartWays> parts;
  for (const AlikeParts& alike : order.parts) {
    PartWays& part = parts.emplace_back(PartWays{alike.parts, {}});
    for (const Way& way : alike.ways)
      part.ways.push_back({.thickness = way.thickness,
                           .length = (way.length + order.saw.kerf).steps(),
                           .width = (way.width + order.saw.kerf).steps(),
                           .turnable = false,
                           .pieces = way.pieces});
  }
  Bounds bounds = bound_by_sizes(yard, std::move(parts), order.effort);
  bounds.measure = order.measure;
  return bounds;
}

void settle_best(Bounds& bounds) {
  const auto take = [&bounds](std::int64_t value, BoundKind kind) {
    if (value <= bounds.best) return;
    bounds.best = value;
    bounds.binding = kind;
  };
  take(bounds.area, BoundKind::area);
  take(bounds.whole_boards, BoundKind::whole_boards);
  if (bounds.linear) take(*bounds.linear, BoundKind::linear);
  if (bounds.dual_whole) take(*bounds.dual_whole, BoundKind::dual_whole);
}

}  // namespace haunch::lumber
