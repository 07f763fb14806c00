#include "quote_due.h"

#include <algorithm>
#include <cmath>

#include "day.h"

namespace haunch {
namespace {

constexpr double kDaysAWeek = 7;
constexpr double kRounding = 1e-9;

std::optional<std::chrono::sys_days> ready_after(double hours, const QuoteReport& report) {
  const auto& begun = report.paper.date;
  const auto& week = report.rates.hours_a_week;
  if (!begun || !week) return {};
  const double days = std::ceil(hours / *week * kDaysAWeek - kRounding);
  return *begun + std::chrono::days(static_cast<int>(days));
}

}  // namespace

std::vector<OrderDue> orders_due(const QuoteReport& report) {
  const QuoteVariant& stated = report.variants.front();
  std::vector<OrderDue> all;
  for (const ItemShare& share : stated.shares) {
    const std::string& due = stated.items()[share.item].job->due;
    all.push_back({share.item, share.hours, 0, {}, due.empty() ? std::nullopt : day_of(due)});
  }
  if (std::none_of(all.begin(), all.end(), [](const OrderDue& it) { return it.wanted; })) return {};
  constexpr auto kLast = std::chrono::sys_days::max();
  std::stable_sort(all.begin(), all.end(), [&](const OrderDue& a, const OrderDue& b) {
    return a.wanted.value_or(kLast) < b.wanted.value_or(kLast);
  });
  double until = 0;
  for (OrderDue& each : all) {
    each.until = until += each.hours;
    each.ready = ready_after(until, report);
  }
  return all;
}

}  // namespace haunch
