// From what an order costs to what is asked for it.
//
//   margin   the part of the price that is not cost: P = C / (1 - M)
//   markup   the part of the cost that is put on it: P = C x (1 + U), U = M / (1 - M)
#pragma once

#include <string>
#include <vector>

#include "cost.h"

namespace haunch {

double markup_of_margin(double margin);
double margin_of_markup(double markup);

struct TaxAmount {
  std::string what;
  double share = 0;
  Money money;
};

struct AskedPrice {
  Money cost;
  Money reckoned;  // as margin or markup make it, to the hundredth
  Money asked;     // as the shop rounds it; before tax
  std::vector<TaxAmount> tax;
  double hours = 0;
  Money goods;  // of the cost what is neither hands nor overhead

  Money to_pay() const;
  /// Of the price asked; of nothing 0.
  double margin() const;
  double markup() const;
  /// What is left of the price for an hour once all that is no hour of the shop's is paid: wages,
  /// overhead and profit. Of no hours nothing.
  Money earns_per_hour() const;
};

/// What the price of a cost is. Requires rates with margin or markup.
AskedPrice price_of(const Cost& cost, double hours, const Rates& rates);

/// A price in so many parts, in percent, that add up to it.
std::vector<Money> stages_of(Money price, const std::vector<double>& percents);

}  // namespace haunch
