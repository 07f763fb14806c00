// What wood and sheets of an order cost: by a cutting plan from the stock file, or by takings-off.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "cost.h"
#include "lumber_report.h"
#include "setups_report.h"

namespace haunch {

/// What wood is bought by.
struct WoodMeans {
  const Rates& rates;
  const std::optional<StockFile>& stock;
  Unit unit = Unit::mm;
  LumberWishes lumber = {};
};

struct WoodCost {
  std::vector<CostLine> lines;
  std::vector<MissingFigure> missing;
  std::string from;               // "a cutting plan"
  std::vector<Problem> problems;  // in the stock file, that show with the parts only
};

/// Of items, each `counts` times as often as it is in one order, and the order so many times. The
/// wood for so many is never dearer than so many times that for one: the better of a plan for all
/// and the plan for one, so often, is taken.
WoodCost wood_cost(const std::vector<ItemReport>& items, const std::vector<std::int64_t>& counts,
                   std::int64_t times, const WoodMeans& means);

/// What is spoilt to try set-ups on: a piece for each in which joints, edges or holes are cut, as
/// long as the rates file says and as wide and thick as the largest that is run on it.
/// By takings-off, rough and with the yield, as wood without a stock file is.
WoodCost trial_cost(const SetupsReport& setups, const WoodMeans& means);

}  // namespace haunch
