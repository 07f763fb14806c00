// faults_of: the program's own check of a plan, from the places, the steps and the sums alone.
#include <algorithm>
#include <map>
#include <set>
#include <tuple>

#include "cutting.h"

namespace haunch::lumber {

namespace {

using Corner = std::tuple<Length, Length, Length, Length>;

Corner key(const Spot& spot) {
  return {spot.x, spot.y, spot.length, spot.width};
}

bool empty(const Spot& spot) {
  return spot.length <= Length() || spot.width <= Length();
}

/// One board's cuts made over again.
class BoardCheck {
 public:
  BoardCheck(const BoardPlan& board, const CuttingOrder& order, std::vector<std::string>& faults)
      : board_(board), stock_(order.stock[board.stock]), order_(order), faults_(faults) {}

  void run() {
    lay({.x = {}, .y = {}, .length = stock_.length, .width = stock_.width});
    for (const Step& step : board_.steps)
      saw(step);
    check_stages();
    for (const Cut& cut : board_.cuts)
      take_part(cut);
    for (const Spot& offcut : board_.offcuts)
      take_offcut(offcut);
  }

 private:
  void fault(const std::string& what) {
    faults_.push_back("stock " + stock_.id + " no. " + std::to_string(board_.copy + 1) + ": " +
                      what);
  }

  void lay(const Spot& piece) {
    if (!empty(piece)) ++pieces_[key(piece)];
  }

  bool take(const Spot& piece) {
    const auto found = pieces_.find(key(piece));
    if (found == pieces_.end() || found->second == 0) return false;
    --found->second;
    return true;
  }

  void saw(const Step& step) {
    if (!take(step.piece)) return fault("a cut is made in a piece that is not there");
    const bool across = step.kind == StepKind::crosscut;
    const Length low = across ? step.piece.x : step.piece.y;
    const Length high = low + (across ? step.piece.length : step.piece.width);
    if (step.from < low || step.from > step.to || step.to > high) {
      return fault("a cut lies outside its piece");
    }
    const bool whole = step.to - step.from == order_.saw.kerf;
    const bool overhangs =
        step.to - step.from < order_.saw.kerf && (step.to == high || step.from == low);
    if (!whole && !overhangs) fault("a cut is not as wide as the blade");
    Spot below = step.piece;
    Spot above = step.piece;
    (across ? below.length : below.width) = step.from - low;
    (across ? above.x : above.y) = step.to;
    (across ? above.length : above.width) = high - step.to;
    lay(below);
    lay(above);
  }

  /// The kind of cut of each stage, where the stages of the order fix it, and of one board alike.
  void check_stages() {
    const bool two = order_.stages == Stages::any_two || order_.stages == Stages::rip_crosscut ||
                     order_.stages == Stages::crosscut_rip;
    for (const Step& step : board_.steps) {
      const bool across = step.kind == StepKind::crosscut;
      if (step.reason == StepReason::defect && !across) fault("a defect is not crosscut away");
      if (step.reason == StepReason::section && two) fault("a third stage where two are allowed");
      const bool inner = step.reason == StepReason::strip || step.reason == StepReason::to_size;
      if (!inner && step.reason != StepReason::section && step.reason != StepReason::part) continue;
      // Sections and parts are parted one way, strips the other.
      if (!may_be(across != inner, two)) fault("a cut out of the order of the stages");
    }
  }

  /// Whether sections and parts may be crosscut (else ripped) from their pieces.
  bool may_be(bool outer_crosscut, bool two) const {
    if (order_.stages == Stages::any_three || order_.stages == Stages::any_two) return true;
    const bool crosscut_first =
        order_.stages == Stages::crosscut_rip_crosscut || order_.stages == Stages::crosscut_rip;
    return two ? outer_crosscut != crosscut_first : outer_crosscut == crosscut_first;
  }

  void take_part(const Cut& cut) {
    const Want& want = order_.wants[cut.want];
    const Length length = cut.turned ? cut.spot.width : cut.spot.length;
    const Length width = cut.turned ? cut.spot.length : cut.spot.width;
    if (length != want.length || width != want.width) fault(want.name + " has another size");
    if (cut.turned && stock_.grain && !want.turnable) fault(want.name + " lies across the grain");
    if (!take(cut.spot)) fault(want.name + " is not a piece that the cuts leave");
    if (!clear(cut.spot)) fault(want.name + " lies in trim or in a defect");
  }

  void take_offcut(const Spot& offcut) {
    if (offcut.length < order_.saw.offcut_length || offcut.width < order_.saw.offcut_width) {
      fault("an offcut is too small to keep");
    }
    if (!take(offcut)) fault("an offcut is not a piece that the cuts leave");
    if (!clear(offcut)) fault("an offcut lies in trim or in a defect");
  }

  bool clear(const Spot& spot) const {
    const Length end = spot.x + spot.length;
    const bool inside = spot.x >= stock_.end_trim && end <= stock_.length - stock_.end_trim &&
                        spot.y >= stock_.edge_trim &&
                        spot.y + spot.width <= stock_.width - stock_.edge_trim;
    return inside && std::all_of(stock_.defects.begin(), stock_.defects.end(),
                                 [&spot, end](const Defect& defect) {
                                   return end <= defect.from || spot.x >= defect.to;
                                 });
  }

  const BoardPlan& board_;
  const Stock& stock_;
  const CuttingOrder& order_;
  std::vector<std::string>& faults_;
  std::map<Corner, int> pieces_;
};

void check_wants(const Plan& plan, const CuttingOrder& order, std::vector<std::string>& faults) {
  std::vector<int> times(order.wants.size());
  const auto count = [&times, &faults](std::size_t want) {
    if (want >= times.size()) {
      faults.emplace_back("a part that nobody wants");
    } else {
      ++times[want];
    }
  };
  for (const BoardPlan& board : plan.boards) {
    for (const Cut& cut : board.cuts)
      count(cut.want);
  }
  for (const Unplaced& unplaced : plan.unplaced)
    count(unplaced.want);
  for (std::size_t want = 0; want < times.size(); ++want) {
    if (times[want] != 1) {
      faults.push_back(order.wants[want].name + " is cut " + std::to_string(times[want]) +
                       " times");
    }
  }
}

void check_stock(const Plan& plan, const CuttingOrder& order, std::vector<std::string>& faults) {
  std::set<std::pair<std::size_t, std::int64_t>> taken;
  for (const BoardPlan& board : plan.boards) {
    const Stock& stock = order.stock[board.stock];
    if (board.copy < 0 || (stock.count && board.copy >= *stock.count)) {
      faults.push_back("stock " + stock.id + " is used up");
    }
    if (!taken.insert({board.stock, board.copy}).second) {
      faults.push_back("stock " + stock.id + " no. " + std::to_string(board.copy + 1) +
                       " is used twice");
    }
    if (board.cuts.empty()) faults.push_back("stock " + stock.id + " is used for nothing");
  }
}

Area dust(const Step& step) {
  return area_of(step.to - step.from,
                 step.kind == StepKind::crosscut ? step.piece.width : step.piece.length);
}

void check_totals(const Plan& plan, const CuttingOrder& order, std::vector<std::string>& faults) {
  Area used, bought, parts, offcuts, kerf;
  Money cost = 0;
  for (const BoardPlan& board : plan.boards) {
    const Stock& stock = order.stock[board.stock];
    used += area_of(stock.length, stock.width);
    if (stock.bought) {
      cost += stock.cost;
      bought += area_of(stock.length, stock.width);
    }
    for (const Cut& cut : board.cuts)
      parts += area_of(cut.spot.length, cut.spot.width);
    for (const Spot& offcut : board.offcuts)
      offcuts += area_of(offcut.length, offcut.width);
    for (const Step& step : board.steps)
      kerf += dust(step);
  }
  const Totals& totals = plan.totals;
  const Area sum = totals.parts + totals.kerf + totals.trim + totals.offcuts + totals.scrap;
  if (totals.cost != cost || totals.area_bought != bought) faults.emplace_back("the cost is wrong");
  if (totals.area_used != used || sum != used) faults.emplace_back("the areas do not add up");
  if (totals.parts != parts || totals.offcuts != offcuts || totals.kerf != kerf ||
      totals.trim < Area() || totals.scrap < Area()) {
    faults.emplace_back("an area is wrong");
  }
  if (plan.bounds.best > plan.bounds.plan) faults.emplace_back("the plan beats its own bound");
}

}  // namespace

std::vector<std::string> faults_of(const Plan& plan, const CuttingOrder& order) {
  std::vector<std::string> faults;
  const auto known = [&order](const BoardPlan& board) {
    return board.stock < order.stock.size() &&
           std::all_of(board.cuts.begin(), board.cuts.end(),
                       [&order](const Cut& cut) { return cut.want < order.wants.size(); });
  };
  if (!std::all_of(plan.boards.begin(), plan.boards.end(), known)) {
    return {"a board or a part that the order does not know"};
  }
  check_wants(plan, order, faults);
  check_stock(plan, order, faults);
  for (const BoardPlan& board : plan.boards)
    BoardCheck(board, order, faults).run();
  check_totals(plan, order, faults);
  return faults;
}

}  // namespace haunch::lumber
