// From cost to price: margin is of the price, markup is on the cost.
#include "pricing.h"

#include <cmath>
#include <numeric>

#include "catch.h"

namespace haunch::test {
namespace {

CostLine line(CostKind kind, std::int64_t hundredths) {
  CostLine line;
  line.kind = kind;
  line.money = {hundredths};
  line.borne = {1};
  return line;
}

Cost cost_of(std::vector<CostLine> lines) {
  Cost cost;
  cost.lines = std::move(lines);
  return cost;
}

Rates with_margin(double margin) {
  Rates rates;
  rates.margin = margin;
  return rates;
}

Rates with_markup(Markup markup) {
  Rates rates;
  rates.markup = markup;
  return rates;
}

const Cost kHundred = cost_of({line(CostKind::labour, 6000), line(CostKind::wood, 4000)});

}  // namespace

// Pairs that text books of retail arithmetic print side by side.
TEST_CASE("A markup is the margin that it comes to, and the other way round") {
  struct Pair {
    double margin, markup;
  };
  for (const Pair& pair : {Pair{0.2, 0.25},
                           {0.25, 1.0 / 3},
                           {1.0 / 3, 0.5},
                           {0.4, 2.0 / 3},
                           {0.5, 1},
                           {0.6, 1.5},
                           {0.75, 3},
                           {0, 0}}) {
    INFO(pair.margin);
    CHECK(std::abs(markup_of_margin(pair.margin) - pair.markup) < 1e-12);
    CHECK(std::abs(margin_of_markup(pair.markup) - pair.margin) < 1e-12);
  }
}

TEST_CASE("A fifth of the price is a quarter on the cost: 100.00 is sold at 125.00 either way") {
  CHECK(price_of(kHundred, 2, with_margin(0.2)).asked == Money{12500});
  CHECK(price_of(kHundred, 2, with_markup({0.25, 0.25, 0.25, 0.25})).asked == Money{12500});
}

TEST_CASE("Markups by heading are each put on what stands under it") {
  const Cost cost = cost_of({line(CostKind::labour, 10000), line(CostKind::wood, 5000),
                             line(CostKind::sheet, 2000), line(CostKind::fittings, 1000),
                             line(CostKind::overhead, 3000)});
  // 100 x 1.5 + 50 x 1.2 + 20 x 1.1 + 10 x 1.05 + 30 x 1.5 (as labour)
  const AskedPrice price = price_of(cost, 5, with_markup({0.2, 0.1, 0.05, 0.5, true}));
  CHECK(price.asked == Money{28750});
}

TEST_CASE("Margin and markup of one price agree") {
  for (const double margin : {0.0, 0.07, 0.25, 1.0 / 3, 0.6, 0.99}) {
    const AskedPrice price = price_of(kHundred, 3, with_margin(margin));
    INFO(margin);
    CHECK(std::abs(price.markup() - markup_of_margin(price.margin())) < 1e-9);
    // As near as a hundredth of the price is.
    CHECK(std::abs(price.margin() - margin) < 0.005 / 100);
  }
}

TEST_CASE("A price is rounded as the shop rounds, and its margin is that of the rounded price") {
  Rates rates = with_margin(0.3);  // 142.857
  CHECK(price_of(kHundred, 1, rates).asked == Money{14286});
  rates.rounding = {5, RoundingWay::nearest};
  CHECK(price_of(kHundred, 1, rates).asked == Money{14500});
  rates.rounding = {10, RoundingWay::nearest};
  CHECK(price_of(kHundred, 1, rates).asked == Money{14000});
  rates.rounding = {10, RoundingWay::up};
  const AskedPrice price = price_of(kHundred, 1, rates);
  CHECK(price.asked == Money{15000});
  CHECK(price.reckoned == Money{14286});
  CHECK(std::abs(price.margin() - 1.0 / 3) < 1e-12);
  CHECK(std::abs(price.markup() - 0.5) < 1e-12);
}

TEST_CASE("A price that is a whole multiple already is not rounded up to the next") {
  Rates rates = with_margin(0.5);
  rates.rounding = {0.1, RoundingWay::up};
  CHECK(price_of(cost_of({line(CostKind::labour, 35)}), 1, rates).asked == Money{70});
}

TEST_CASE("Tax stands on top, line by line, each rounded by itself") {
  Rates rates = with_margin(0);
  rates.tax = {{"state", 0.0725}, {"county", 0.0125}};
  const AskedPrice price = price_of(cost_of({line(CostKind::labour, 19999)}), 1, rates);
  REQUIRE(price.tax.size() == 2);
  CHECK(price.tax[0].money == Money{1450});  // 14.499
  CHECK(price.tax[1].money == Money{250});   // 2.4999
  CHECK(price.to_pay() == Money{19999 + 1450 + 250});
}

TEST_CASE("An hour earns what is left of the price once all that is bought is paid") {
  const Cost cost = cost_of({line(CostKind::labour, 30000), line(CostKind::wood, 12000),
                             line(CostKind::fittings, 3000), line(CostKind::overhead, 5000)});
  // 625.00 at a margin of a fifth; 475.00 of it for ten hours.
  CHECK(price_of(cost, 10, with_margin(0.2)).earns_per_hour() == Money{4750});
}

TEST_CASE("A price in stages adds up to it") {
  const std::vector<Money> stages = stages_of({10001}, {40, 50, 10});
  CHECK(stages == std::vector<Money>{{4000}, {5001}, {1000}});
  const std::vector<Money> thirds = stages_of({10000}, {33, 33, 34});
  CHECK(thirds == std::vector<Money>{{3300}, {3300}, {3400}});
}

}  // namespace haunch::test
