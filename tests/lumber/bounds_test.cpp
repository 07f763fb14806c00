#include "catch.h"
#include "column_generation.h"
#include "cover.h"
#include "dual_bound.h"
#include "orders.h"
#include "pricer.h"
#include "strip_fill.h"

using namespace haunch;
using namespace haunch::lumber;

namespace {

/// Bars of 1000 for parts of 600 and 500, no kerf: the first kind is worth 60, the other 52.
Model bars() {
  return model_of(
      order_of({part(600, 100), part(500, 100), part(500, 100)}, {yard("bar", 1000, 100, 700)}, 0));
}
/// The same side by side on boards of twice the width.
Model boards() {
  return model_of(order_of({part(600, 100), part(500, 100), part(500, 100), part(500, 100)},
                           {yard("board", 1000, 200, 700)}, 0));
}
std::vector<double> values_of(const Model& model) {
  std::vector<double> values;
  for (const PartKind& kind : model.parts)
    values.push_back(kind.length == mm(600).steps() ? 60 : 52);
  return values;
}
std::vector<int> demand_of(const Model& model) {
  std::vector<int> demand;
  for (const PartKind& kind : model.parts)
    demand.push_back(static_cast<int>(kind.demand()));
  return demand;
}

}  // namespace

TEST_CASE(
    "three boards at 700 are less than one at 1000 and two more, in parts it is the other way") {
  const std::vector<Carrier> carriers{{700, 10, {}}, {1000, 16, 1}};
  const Cover cheapest = cover(carriers, 30);
  CHECK(cheapest.possible);
  CHECK(cheapest.whole_boards == 2100);
  CHECK(cheapest.parts_of_boards == 2000);  // 1000 and 14 tenths of 700, up to whole hundreds
}

TEST_CASE("two boards of 10 do not carry 30") {
  CHECK_FALSE(cover({{700, 10, 2}}, 30).possible);
}

TEST_CASE("the areas that bounds go by are rounded to their safe side") {
  const Model model = bars();
  const double whole = 10000.0 * 1000.0;  // tenths of a mm
  CHECK(board_area(model.boards[0]) >= whole);
  CHECK(board_area(model.boards[0]) <= whole + 1);
  for (const PartKind& kind : model.parts) {
    const double exact = (kind.length == mm(600).steps() ? 6000.0 : 5000.0) * 1000.0;
    CHECK(part_area(kind) <= exact);
    CHECK(part_area(kind) >= exact - 1);
  }
  CHECK(row_room(model.boards[0]) >= 2 * row_need(model.parts[1]));
}

TEST_CASE(
    "two of 500 are worth more in a bar than one of 600; one wanted, no more than one counts") {
  const Model model = bars();
  Pricer pricer(model);
  CHECK(pricer.price(values_of(model), {2, 2})[0].at_most == 104);
  CHECK(pricer.price(values_of(model), {1, 1})[0].at_most == 60);
}

TEST_CASE("two rows of two on a board twice as wide, exactly") {
  const Model model = boards();
  REQUIRE_FALSE(model.single_row);
  Pricer pricer(model);
  const auto priced = pricer.price(values_of(model), {4, 4});
  CHECK(priced[0].at_most == 208);
  REQUIRE_FALSE(priced[0].patterns.empty());
  CHECK(value_of(priced[0].patterns.front(), values_of(model)) == 208);
}

TEST_CASE("a board is filled for the most value, with no more than are left") {
  const Model model = bars();
  Filler filler(model);
  Random random(1);
  const auto values = values_of(model);
  CHECK(value_of(filler.fill(0, values, {2, 2}, {}, random), values) == 104);
  CHECK(value_of(filler.fill(0, values, {1, 1}, {}, random), values) == 60);
  CHECK(filler.fill(0, values, {0, 0}, {}, random).parts.empty());
}

TEST_CASE(
    "a part of 600 needs a bar, two of 500 another: the mixture comes to two, and the duals prove "
    "it") {
  const Model model = bars();
  ColumnGeneration columns(model, 1);
  const Relaxation relaxed = columns.solve(rest_of(model), 50, 50);
  CHECK(relaxed.finished);
  CHECK(relaxed.lacking < 1e-9);
  double used = 0;
  for (const double amount : relaxed.amounts)
    used += amount;
  CHECK(used > 2 - 1e-6);
  CHECK(used < 2 + 1e-6);
  REQUIRE_FALSE(columns.proofs().empty());
  std::int64_t best = 0;
  for (const Proof& proof : columns.proofs()) {
    const double need = columns.need(proof.values, demand_of(model));
    best = std::max(best, dual_bound(model, need, proof.at_most).linear);
  }
  CHECK(best == 1400);
}

TEST_CASE("whatever the prices, the bound they give holds") {
  const Model model = bars();
  // By length alone: 1600 mm are wanted, a bar carries 1000: 1.6 bars, or two whole ones.
  const DualBound bound = dual_bound(model, 1600, {1000});
  CHECK(bound.linear == 1400);  // 1120, up to what bars can cost
  CHECK(bound.dual_whole == 1400);
  CHECK(dual_bound(model, 0, {1000}).linear == 0);
}
