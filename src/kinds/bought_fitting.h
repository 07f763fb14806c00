// Fittings that a shop says once, in its shop file, and specs take by name.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "haunch/trade.h"

namespace haunch {

/// What a fitting serves as.
enum class FittingUse { hinges, lock, cup_hinges, runners };

/// A fitting as it is bought.
struct BoughtFitting {
  std::string name;
  std::string code;             // of its maker or merchant; empty: none
  double mass = 0;              // kg of each; 0: not told
  int pack = 1;                 // how many a pack has
  std::optional<double> price;  // of a pack
  std::string priced;           // the day of that price, as 2031-05-17; empty: not told
  std::optional<int> lead_days;
};

/// One that an item takes by name.
struct TakenFitting {
  FittingUse use = FittingUse::hinges;
  BoughtFitting bought;
};

}  // namespace haunch
