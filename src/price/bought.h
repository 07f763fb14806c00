// Fittings of the shop's list that work takes by name, in the packs that they are bought in.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "bought_fitting.h"
#include "fitted.h"

namespace haunch {

struct BoughtLine {
  BoughtFitting fitting;
  std::int64_t number = 0;  // that is needed

  /// Whole packs: of 7 in packs of 2 there are 4.
  std::int64_t packs() const { return (number + fitting.pack - 1) / fitting.pack; }
};

/// By which fitting goods are bought; null where none is taken by name for their use.
const BoughtFitting* listed_for(const FittedGoods& goods, const std::vector<TakenFitting>& taken);

/// What so many items of a wood need. One name stands once, whatever it serves as.
std::vector<BoughtLine> bought_for(const Assembly& wood, const std::vector<TakenFitting>& taken,
                                   std::int64_t items);

/// Puts lines of the same fittings together.
void add_bought(std::vector<BoughtLine>& all, const std::vector<BoughtLine>& more);

/// The last day to order a fitting on that is to be there by a day, "2031-05-17"; nothing where one
/// of them is not told.
std::optional<std::string> order_by(const BoughtFitting& fitting, const std::string& due);

}  // namespace haunch
