#include "model.h"

#include <algorithm>
#include <map>
#include <set>
#include <string>
#include <tuple>

namespace haunch::lumber {

namespace {

void require(bool good, const std::string& what) {
  if (!good) throw std::invalid_argument("cutting order: " + what);
}

void require_good(const Stock& stock) {
  const Length none;
  require(stock.length > none && stock.width > none, "stock " + stock.id + " has no size");
  require(stock.cost >= 0, "stock " + stock.id + " costs less than nothing");
  require(stock.end_trim >= none && stock.edge_trim >= none, "stock " + stock.id + " trim");
  require(!stock.count || *stock.count >= 0, "stock " + stock.id + " count");
  for (const Defect& defect : stock.defects) {
    require(none <= defect.from && defect.from < defect.to && defect.to <= stock.length,
            "stock " + stock.id + " defect");
  }
}

void require_good(const CuttingOrder& order) {
  const Length none;
  require(order.saw.kerf >= none, "kerf");
  require(order.effort >= 1 && order.effort <= 100, "effort");
  std::set<std::string> ids;
  for (const Want& want : order.wants) {
    require(want.length > none && want.width > none, "part " + want.name + " has no size");
  }
  for (const Stock& stock : order.stock) {
    require_good(stock);
    require(ids.insert(stock.id).second, "stock " + stock.id + " is there twice");
  }
}

/// The stretches of a board that parts may come from. A defect shorter than the blade is as long
/// as the blade: two parts on its two sides have one cut between them at least.
std::vector<Span> clear_spans(const Stock& stock, Length kerf) {
  std::vector<Defect> defects = stock.defects;
  std::sort(defects.begin(), defects.end(),
            [](const Defect& a, const Defect& b) { return a.from < b.from; });
  std::vector<Span> spans;
  Length start = stock.end_trim;
  const Length end = stock.length - stock.end_trim;
  const auto add = [&spans, kerf](Length from, Length to) {
    if (from < to) spans.push_back({from.steps(), (to - from + kerf).steps()});
  };
  for (const Defect& defect : defects) {
    add(start, std::min(defect.from, end));
    const Length beyond =
        defect.from > stock.end_trim ? std::max(defect.to, defect.from + kerf) : defect.to;
    start = std::max(start, beyond);
  }
  add(start, end);
  return spans;
}

BoardKind board_kind(const Stock& stock, std::size_t index, Length kerf) {
  BoardKind kind;
  kind.length = stock.length;
  kind.width = stock.width;
  kind.start_y = stock.edge_trim.steps();
  const Length clear = stock.width - stock.edge_trim * 2;
  if (clear > Length()) {
    kind.clear_width = (clear + kerf).steps();
    kind.spans = clear_spans(stock, kerf);
  }
  kind.grain = stock.grain;
  kind.bought = stock.bought;
  kind.cost = stock.bought ? stock.cost : 0;
  kind.limit = stock.count;
  kind.sources = {{index, stock.count}};
  return kind;
}

bool alike(const BoardKind& a, const BoardKind& b) {
  return a.length == b.length && a.width == b.width && a.start_y == b.start_y &&
         a.spans == b.spans && a.grain == b.grain && a.bought == b.bought && a.cost == b.cost &&
         a.thickness == b.thickness;
}

void merge_board(std::vector<BoardKind>& boards, BoardKind&& board) {
  const auto same = std::find_if(boards.begin(), boards.end(),
                                 [&board](const BoardKind& other) { return alike(board, other); });
  if (same == boards.end()) {
    boards.push_back(std::move(board));
    return;
  }
  same->sources.push_back(board.sources.front());
  if (!same->limit || !board.limit) {
    same->limit.reset();
  } else {
    same->limit = *same->limit + *board.limit;
  }
}

std::vector<PartKind> part_kinds(const CuttingOrder& order) {
  std::map<std::tuple<Length, Length, bool>, std::size_t> known;
  std::vector<PartKind> kinds;
  const Length kerf = order.saw.kerf;
  for (std::size_t index = 0; index < order.wants.size(); ++index) {
    const Want& want = order.wants[index];
    const auto [place, fresh] =
        known.try_emplace({want.length, want.width, want.turnable}, kinds.size());
    if (fresh) {
      kinds.push_back({.length = (want.length + kerf).steps(),
                       .width = (want.width + kerf).steps(),
                       .turnable = want.turnable,
                       .wants = {}});
    }
    kinds[place->second].wants.push_back(index);
  }
  return kinds;
}

/// Leaves out the parts that fit nowhere and the boards that nothing fits.
void leave_out_misfits(Model& model) {
  std::vector<PartKind> placeable;
  for (PartKind& part : model.parts) {
    const bool fitting = std::any_of(
        model.boards.begin(), model.boards.end(),
        [&part](const BoardKind& board) { return board.limit != 0 && fits_some_way(part, board); });
    if (fitting) {
      placeable.push_back(std::move(part));
    } else {
      model.too_big.insert(model.too_big.end(), part.wants.begin(), part.wants.end());
    }
  }
  std::sort(model.too_big.begin(), model.too_big.end());
  model.parts = std::move(placeable);
}

bool all_in_a_row(const Model& model) {
  std::int64_t widest = 0;
  for (const BoardKind& board : model.boards)
    widest = std::max(widest, board.clear_width);
  for (const PartKind& part : model.parts) {
    const bool may_turn = part.length <= widest &&
                          std::any_of(model.boards.begin(), model.boards.end(),
                                      [&part](const BoardKind& b) { return fits(part, true, b); });
    const std::int64_t least = may_turn ? std::min(part.length, part.width) : part.width;
    if (may_turn || 2 * least <= widest) return false;
  }
  return true;
}

void set_stages(Model& model, Stages stages) {
  model.three_stages = stages == Stages::any_three || stages == Stages::crosscut_rip_crosscut ||
                       stages == Stages::rip_crosscut_rip;
  model.u_along = stages != Stages::rip_crosscut_rip && stages != Stages::crosscut_rip;
  model.u_across = stages != Stages::crosscut_rip_crosscut && stages != Stages::rip_crosscut;
}

std::int64_t price_of(const BoardKind& board, Measure measure) {
  switch (measure) {
    case Measure::money:
      return board.cost;
    case Measure::boards:
      return 1;
    case Measure::square_mm:
      break;
  }
  return std::max<std::int64_t>(1, floor_square_mm(board.area()));
}

}  // namespace

double BoardKind::clear_area() const {
  double area = 0;
  for (const Span& span : spans) {
    area += static_cast<double>(span.length) * static_cast<double>(clear_width);
  }
  return area;
}

std::int64_t Model::demand() const {
  std::int64_t all = 0;
  for (const PartKind& part : parts)
    all += part.demand();
  return all;
}

std::int64_t along(const PartKind& part, bool turned) {
  return turned ? part.width : part.length;
}

std::int64_t across(const PartKind& part, bool turned) {
  return turned ? part.length : part.width;
}

bool fits(const PartKind& part, bool turned, const BoardKind& board) {
  if (part.thickness != board.thickness) return false;
  if (turned && board.grain && !part.turnable) return false;
  if (across(part, turned) > board.clear_width) return false;
  return std::any_of(board.spans.begin(), board.spans.end(), [&part, turned](const Span& span) {
    return along(part, turned) <= span.length;
  });
}

bool fits_some_way(const PartKind& part, const BoardKind& board) {
  return fits(part, false, board) || fits(part, true, board);
}

void set_prices(Model& model, Measure measure) {
  // The tie-breakers weigh a ten-thousandth: area first, boards a tenth of that.
  constexpr double kLight = 1e-4;
  model.measure = measure;
  double price_per_area = 0;
  for (BoardKind& board : model.boards) {
    board.price = price_of(board, measure);
    price_per_area =
        std::max(price_per_area, static_cast<double>(board.price) / square_mm(board.area()));
  }
  if (price_per_area == 0) price_per_area = 1;
  for (BoardKind& board : model.boards) {
    const double dear = price_per_area * square_mm(board.area());
    board.weight = static_cast<double>(board.price) + kLight * dear;
  }
}

Model model_of(const CuttingOrder& order) {
  require_good(order);
  Model model;
  model.kerf = order.saw.kerf.steps();
  model.parts = part_kinds(order);
  for (std::size_t index = 0; index < order.stock.size(); ++index) {
    merge_board(model.boards, board_kind(order.stock[index], index, order.saw.kerf));
  }
  leave_out_misfits(model);
  fit_boards(model);
  const std::int64_t most = model.demand();
  for (BoardKind& board : model.boards) {
    if (board.limit && *board.limit > most) board.limit = most;
  }
  set_stages(model, order.stages);
  switch (order.prefer) {
    case Prefer::cost:
      set_prices(model, Measure::money);
      break;
    case Prefer::waste:
      set_prices(model, Measure::square_mm);
      break;
    case Prefer::boards:
      set_prices(model, Measure::boards);
      break;
  }
  return model;
}

Model yard_of(const std::vector<std::vector<Stock>>& stock, Length kerf, Stages stages,
              Measure measure) {
  Model model;
  model.kerf = kerf.steps();
  for (std::size_t thickness = 0; thickness < stock.size(); ++thickness) {
    for (const Stock& each : stock[thickness]) {
      require_good(each);
      BoardKind board = board_kind(each, 0, kerf);
      board.thickness = thickness;
      merge_board(model.boards, std::move(board));
    }
  }
  set_stages(model, stages);
  set_prices(model, measure);
  return model;
}

void fit_boards(Model& model) {
  std::erase_if(model.boards, [&model](const BoardKind& board) {
    return board.limit == 0 ||
           std::none_of(model.parts.begin(), model.parts.end(),
                        [&board](const PartKind& part) { return fits_some_way(part, board); });
  });
  model.single_row = all_in_a_row(model);
}

}  // namespace haunch::lumber
