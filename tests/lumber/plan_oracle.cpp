#include "plan_oracle.h"

#include <algorithm>
#include <set>

namespace haunch::lumber {

namespace {

using Objections = std::vector<std::string>;

Length end_x(const Spot& spot) {
  return spot.x + spot.length;
}

Length end_y(const Spot& spot) {
  return spot.y + spot.width;
}

/// Whether the blade passes between the two.
bool apart(const Spot& a, const Spot& b, Length kerf) {
  return end_x(a) + kerf <= b.x || end_x(b) + kerf <= a.x || end_y(a) + kerf <= b.y ||
         end_y(b) + kerf <= a.y;
}

bool sound(const Spot& spot, const Stock& stock) {
  if (spot.x < stock.end_trim || end_x(spot) > stock.length - stock.end_trim) return false;
  if (spot.y < stock.edge_trim || end_y(spot) > stock.width - stock.edge_trim) return false;
  return std::none_of(stock.defects.begin(), stock.defects.end(),
                      [&spot](const Defect& d) { return spot.x < d.to && end_x(spot) > d.from; });
}

void look_at_places(const BoardPlan& board, const CuttingOrder& order, Objections& objections) {
  const Stock& stock = order.stock.at(board.stock);
  std::vector<Spot> spots = board.offcuts;
  for (const Cut& cut : board.cuts) {
    spots.push_back(cut.spot);
    const Want& want = order.wants.at(cut.want);
    const bool as_asked = cut.turned
                              ? cut.spot.length == want.width && cut.spot.width == want.length
                              : cut.spot.length == want.length && cut.spot.width == want.width;
    if (!as_asked) objections.push_back(want.name + ": not the size asked for");
    if (cut.turned && stock.grain && !want.turnable) objections.push_back(want.name + ": turned");
  }
  for (std::size_t a = 0; a < spots.size(); ++a) {
    if (!sound(spots[a], stock)) objections.emplace_back("not in sound wood");
    for (std::size_t b = a + 1; b < spots.size(); ++b) {
      if (!apart(spots[a], spots[b], order.saw.kerf)) objections.emplace_back("no kerf between");
    }
  }
}

/// A cut takes the blade's width, or less where the piece ends within the blade.
bool as_wide_as_the_blade(const Step& step, Length kerf) {
  const bool across = step.kind == StepKind::crosscut;
  const Length low = across ? step.piece.x : step.piece.y;
  const Length high = across ? end_x(step.piece) : end_y(step.piece);
  const Length taken = step.to - step.from;
  const bool at_an_end = step.from == low || step.to == high;
  return taken == kerf || (at_an_end && taken >= Length() && taken < kerf);
}

/// Saws the board up by its steps and looks for every part among the pieces.
void saw_up(const BoardPlan& board, const CuttingOrder& order, Objections& objections) {
  const Stock& stock = order.stock.at(board.stock);
  std::vector<Spot> pieces{{.x = {}, .y = {}, .length = stock.length, .width = stock.width}};
  for (const Step& step : board.steps) {
    if (!as_wide_as_the_blade(step, order.saw.kerf))
      objections.emplace_back("sawn: a cut is not as wide as the blade");
    const auto found = std::find(pieces.begin(), pieces.end(), step.piece);
    if (found == pieces.end()) {
      objections.emplace_back("sawn: a piece that is not there");
      return;
    }
    pieces.erase(found);
    Spot low = step.piece;
    Spot high = step.piece;
    if (step.kind == StepKind::crosscut) {
      low.length = step.from - low.x;
      high.length = end_x(high) - step.to;
      high.x = step.to;
    } else {
      low.width = step.from - low.y;
      high.width = end_y(high) - step.to;
      high.y = step.to;
    }
    pieces.push_back(low);
    pieces.push_back(high);
  }
  for (const Cut& cut : board.cuts) {
    const auto found = std::find(pieces.begin(), pieces.end(), cut.spot);
    if (found == pieces.end()) {
      objections.push_back(order.wants[cut.want].name + ": not sawn out");
    } else {
      pieces.erase(found);
    }
  }
}

void count_parts(const Plan& plan, const CuttingOrder& order, Objections& objections) {
  std::vector<int> times(order.wants.size());
  for (const BoardPlan& board : plan.boards) {
    for (const Cut& cut : board.cuts)
      ++times.at(cut.want);
  }
  for (const Unplaced& unplaced : plan.unplaced)
    ++times.at(unplaced.want);
  if (std::any_of(times.begin(), times.end(), [](int count) { return count != 1; }))
    objections.emplace_back("a part is cut twice or never");
}

void count_boards(const Plan& plan, const CuttingOrder& order, Objections& objections) {
  std::set<std::pair<std::size_t, std::int64_t>> used;
  Money cost = 0;
  Area area;
  Area parts;
  for (const BoardPlan& board : plan.boards) {
    const Stock& stock = order.stock.at(board.stock);
    if (!used.insert({board.stock, board.copy}).second) objections.emplace_back("a board twice");
    if (stock.count && board.copy >= *stock.count) objections.emplace_back("a board too many");
    cost += stock.bought ? stock.cost : 0;
    area += area_of(stock.length, stock.width);
    for (const Cut& cut : board.cuts)
      parts += area_of(cut.spot.length, cut.spot.width);
  }
  const Totals& totals = plan.totals;
  if (totals.cost != cost) objections.emplace_back("the cost does not add up");
  if (totals.parts != parts) objections.emplace_back("the parts do not add up");
  const Area sum = totals.parts + totals.kerf + totals.trim + totals.offcuts + totals.scrap;
  if (sum != area || totals.area_used != area) objections.emplace_back("the area does not add up");
  if (std::min({totals.kerf, totals.trim, totals.offcuts, totals.scrap}) < Area())
    objections.emplace_back("less wood than none");
  const Bounds& bounds = plan.bounds;
  if (std::max({bounds.area, bounds.whole_boards, bounds.linear.value_or(0),
                bounds.dual_whole.value_or(0), bounds.best}) > bounds.plan)
    objections.emplace_back("a bound above the plan");
}

}  // namespace

std::vector<std::string> objections(const Plan& plan, const CuttingOrder& order) {
  Objections objections;
  for (const BoardPlan& board : plan.boards) {
    look_at_places(board, order, objections);
    saw_up(board, order, objections);
  }
  count_parts(plan, order, objections);
  count_boards(plan, order, objections);
  return objections;
}

}  // namespace haunch::lumber
