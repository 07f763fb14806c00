#include "pricing.h"

#include <cmath>

#include "shares.h"

namespace haunch {
namespace {

constexpr double kHundredths = 100;

double in_units(Money money) {
  return static_cast<double>(money.hundredths) / kHundredths;
}

/// The markup that a line bears. What keeps the shop going goes with its hands.
double markup_on(CostKind kind, const Markup& markup) {
  switch (kind) {
    case CostKind::wood:
    case CostKind::trial:
      return markup.wood;
    case CostKind::sheet:
    case CostKind::edge_strip:
      return markup.sheet;
    case CostKind::glass:
    case CostKind::fittings:
    case CostKind::finish:
    case CostKind::bought_in:
      return markup.bought_in;
    default:
      return markup.labour;
  }
}

double marked_up(const Cost& cost, const Markup& markup) {
  double sum = 0;
  for (const CostLine& line : cost.lines)
    sum += in_units(line.money) * (1 + markup_on(line.kind, markup));
  return sum;
}

/// A figure a hair beside a whole multiple is that multiple.
Money rounded(Money price, const PriceRounding& rounding) {
  constexpr double kHair = 1e-6;
  const double times = in_units(price) / rounding.to;
  const double whole =
      rounding.way == RoundingWay::up ? std::ceil(times - kHair) : std::floor(times + 0.5 + kHair);
  return to_hundredths(whole * rounding.to);
}

bool is_of_hours(CostKind kind) {
  return kind == CostKind::labour || kind == CostKind::overhead || kind == CostKind::contingency;
}

}  // namespace

double markup_of_margin(double margin) {
  return margin / (1 - margin);
}

double margin_of_markup(double markup) {
  return markup / (1 + markup);
}

Money AskedPrice::to_pay() const {
  Money sum = asked;
  for (const TaxAmount& each : tax)
    sum += each.money;
  return sum;
}

double AskedPrice::margin() const {
  return asked.hundredths == 0 ? 0 : in_units(asked - cost) / in_units(asked);
}

double AskedPrice::markup() const {
  return cost.hundredths == 0 ? 0 : in_units(asked - cost) / in_units(cost);
}

Money AskedPrice::earns_per_hour() const {
  return hours > 0 ? to_hundredths(in_units(asked - goods) / hours) : Money();
}

AskedPrice price_of(const Cost& cost, double hours, const Rates& rates) {
  AskedPrice price;
  price.cost = cost.total();
  price.hours = hours;
  for (const CostLine& line : cost.lines)
    if (!is_of_hours(line.kind)) price.goods += line.money;
  price.reckoned = to_hundredths(rates.markup ? marked_up(cost, *rates.markup)
                                              : in_units(price.cost) / (1 - rates.margin.value()));
  price.asked = rounded(price.reckoned, rates.rounding);
  for (const TaxLine& line : rates.tax)
    price.tax.push_back({line.what, line.share, to_hundredths(in_units(price.asked) * line.share)});
  return price;
}

std::vector<Money> stages_of(Money price, const std::vector<double>& percents) {
  return shares_of(price, percents);
}

}  // namespace haunch
