// Orders and rates for tests of hours, in short.
#pragma once

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>
#include <vector>

#include "../vocabulary.h"
#include "hours.h"
#include "rates_file.h"
#include "setups_report.h"

namespace haunch::test {

/// Items as they are worked, ordered into set-ups in a usual shop.
struct PricedOrder {
  SetupsReport report;
  std::vector<SetupItem> setup_items;
  std::vector<HourItem> items;

  HoursPlan hours(const Rates& rates, std::int64_t quantity = 1) const {
    return hours_of(report.plan, items, rates, quantity);
  }
};

inline PricedOrder order_of(const std::vector<std::string>& specs) {
  std::vector<ItemReport> items;
  for (const std::string& spec : specs)
    items.push_back(std::move(
        *report_item(std::move(read_job(value_of(spec), nullptr, "job").job), kWantedForSetups)
             .report));
  const Unit unit = items.front().job->unit;
  PricedOrder order;
  order.report = report_setups(std::move(items), {}, "", unit);
  order.setup_items = setup_items(order.report.items);
  for (const SetupItem& item : order.setup_items)
    order.items.push_back({&item});
  return order;
}

/// A rates file with a wage of 20 and no more than what is said.
inline std::string rates_with(const std::string& more) {
  return R"({"currency": "EUR", "wage": 20, "burden": 0.3, "billable": 0.7, "margin": 0.2)" +
         (more.empty() ? "" : ", " + more) + "}";
}

inline Rates rates_of(const std::string& text) {
  RatesReading reading = read_rates(value_of(text));
  for (const Problem& problem : reading.problems)
    UNSCOPED_INFO(problem.path << ": " << problem.message);
  REQUIRE(reading.rates);
  return *reading.rates;
}

/// Those of examples/shop.
inline Rates example_rates() {
  std::stringstream text;
  text << std::ifstream(std::string(HAUNCH_EXAMPLES) + "/shop/rates.json").rdbuf();
  return rates_of(text.str());
}

inline HourLine line_of(const HoursPlan& hours, const std::string& operation) {
  const auto its = std::find_if(hours.lines.begin(), hours.lines.end(),
                                [&](const HourLine& it) { return it.operation == operation; });
  REQUIRE(its != hours.lines.end());
  return *its;
}

}  // namespace haunch::test
