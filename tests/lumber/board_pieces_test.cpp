#include "board_pieces.h"

#include <algorithm>

#include "catch.h"
#include "orders.h"

using namespace haunch;
using namespace haunch::lumber;

namespace {

Area dust_of(const Step& step) {
  return area_of(step.to - step.from,
                 step.kind == StepKind::crosscut ? step.piece.width : step.piece.length);
}

Area sum_of(const std::vector<BoardPiece>& pieces, PieceKind kind) {
  Area sum;
  for (const BoardPiece& piece : pieces)
    if (piece.kind == kind) sum += area_of(piece.spot.length, piece.spot.width);
  return sum;
}

std::ptrdiff_t count_of(const std::vector<BoardPiece>& pieces, PieceKind kind) {
  return std::count_if(pieces.begin(), pieces.end(),
                       [&](const BoardPiece& piece) { return piece.kind == kind; });
}

}  // namespace

TEST_CASE("a board comes apart into its parts, what is kept, four trims and scrap") {
  // 3000 less 10 at each end; 900 and 1800 of it, with two cuts of 3: 2980 - 2706 = 274 is scrap.
  Stock board = yard("ash", 3000, 160, 900);
  board.end_trim = mm(10);
  board.edge_trim = mm(5);
  const CuttingOrder order = order_of({part(900, 150), part(1800, 150)}, {board}, 3);
  const Plan plan = plan_cutting(order);
  REQUIRE(plan.boards.size() == 1);
  const std::vector<BoardPiece> pieces = pieces_of(plan.boards[0], order.stock[0]);
  CHECK(count_of(pieces, PieceKind::part) == 2);
  CHECK(count_of(pieces, PieceKind::trim) == 4);
  CHECK(sum_of(pieces, PieceKind::part) == area_of(mm(2700), mm(150)));
  CHECK(sum_of(pieces, PieceKind::scrap) == area_of(mm(274), mm(150)));
}

TEST_CASE("the pieces of a board and the blade's dust are the board again") {
  Stock board = yard("ash", 2400, 200, 900);
  board.end_trim = mm(20);
  board.edge_trim = mm(4);
  board.defects = {{mm(1000), mm(1100)}};
  std::vector<Want> wants;
  for (int i = 0; i < 12; ++i)
    wants.push_back(part(300 + 70 * (i % 5), 40 + 25 * (i % 4)));
  const CuttingOrder order = order_of(wants, {board}, 3);
  const Plan plan = plan_cutting(order);
  Area trim;
  Area scrap;
  for (const BoardPlan& each : plan.boards) {
    const std::vector<BoardPiece> pieces = pieces_of(each, order.stock[each.stock]);
    Area sum;
    for (const BoardPiece& piece : pieces)
      sum += area_of(piece.spot.length, piece.spot.width);
    for (const Step& step : each.steps)
      sum += dust_of(step);
    CHECK(sum == area_of(mm(2400), mm(200)));
    CHECK(count_of(pieces, PieceKind::part) == static_cast<std::ptrdiff_t>(each.cuts.size()));
    CHECK(count_of(pieces, PieceKind::kept) == static_cast<std::ptrdiff_t>(each.offcuts.size()));
    trim += sum_of(pieces, PieceKind::trim);
    scrap += sum_of(pieces, PieceKind::scrap);
  }
  CHECK(trim == plan.totals.trim);
  CHECK(scrap == plan.totals.scrap);
}

TEST_CASE("a board that is taken as it is stays in one piece") {
  const CuttingOrder order = order_of({part(900, 150)}, {yard("ash", 900, 150, 900)}, 3);
  const Plan plan = plan_cutting(order);
  REQUIRE(plan.boards.size() == 1);
  const std::vector<BoardPiece> pieces = pieces_of(plan.boards[0], order.stock[0]);
  REQUIRE(pieces.size() == 1);
  CHECK(pieces[0].kind == PieceKind::part);
}
