// What is late: hours of orders beside the hours of a week and the days that they are wanted by.
#pragma once

#include <chrono>
#include <optional>
#include <string>
#include <vector>

#include "quote_report.h"

namespace haunch {

/// One item as it comes up.
struct OrderDue {
  std::size_t item = 0;
  double hours = 0;                             // its own
  double until = 0;                             // all hours until it is ready
  std::optional<std::chrono::sys_days> ready;   // where the rates and the paper tell
  std::optional<std::chrono::sys_days> wanted;  // where the item says

  bool is_late() const { return ready && wanted && *ready > *wanted; }
  std::int64_t days_late() const { return is_late() ? (*ready - *wanted).count() : 0; }
};

/// Of the order as stated, one item after the other, those that are wanted first before the others,
/// those of no told day last. Work begins on the day that the paper bears, and the hours of a week
/// are spread over all its days. Empty where no item says when it is wanted.
std::vector<OrderDue> orders_due(const QuoteReport& report);

}  // namespace haunch
