#include "cost.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>
#include <utility>

#include "shares.h"

namespace haunch {
namespace {

constexpr double kMinutesAnHour = 60;

/// Minutes that items spend, added up.
class Spent {
 public:
  explicit Spent(std::size_t items) : by_item_(items, 0.0) {}

  void add(const HourLine& line) {
    time_ += line.total();
    for (const ItemTime& each : line.items)
      by_item_[each.item] += (each.setup + each.run).minutes();
  }
  double hours() const { return time_.minutes() / kMinutesAnHour; }
  const Bearing& by_item() const { return by_item_; }

 private:
  WorkTime time_;
  Bearing by_item_;
};

/// In the order in which they come up.
template <typename Key>
class SpentBy {
 public:
  explicit SpentBy(std::size_t items) : items_(items) {}

  void add(const Key& key, const HourLine& line) {
    auto same =
        std::find_if(all_.begin(), all_.end(), [&](const auto& each) { return each.first == key; });
    if (same == all_.end()) same = all_.insert(all_.end(), {key, Spent(items_)});
    same->second.add(line);
  }
  const std::vector<std::pair<Key, Spent>>& all() const { return all_; }

 private:
  std::size_t items_;
  std::vector<std::pair<Key, Spent>> all_;
};

/// What items bear of all lines so far, as they are rounded.
Bearing bearing_of(const std::vector<CostLine>& lines, std::size_t items) {
  Bearing all(items, 0.0);
  for (const CostLine& line : lines) {
    const double sum = std::accumulate(line.borne.begin(), line.borne.end(), 0.0);
    for (std::size_t i = 0; i < items && sum > 0; ++i)
      all[i] += static_cast<double>(line.money.hundredths) * line.borne[i] / sum;
  }
  return all;
}

std::string percent_text(double share) {
  constexpr double kPercent = 100;
  std::string text = std::to_string(share * kPercent);  // six places
  text.erase(text.find_last_not_of('0') + 1);
  if (text.ends_with('.')) text.pop_back();
  return text + " %";
}

/// "42.4286", "9.50": so fine that whoever multiplies comes to the same hundredth.
std::string rate_text(double for_one) {
  constexpr std::size_t kFewest = 2;
  constexpr double kTenThousandths = 10'000;
  std::string text = std::to_string(std::round(for_one * kTenThousandths) / kTenThousandths);
  const std::size_t least = text.find('.') + 1 + kFewest;
  while (text.size() > least && text.ends_with('0'))
    text.pop_back();
  return text;
}

CostLine share_line(CostKind kind, const std::string& of, double share, const Cost& cost,
                    std::size_t items) {
  CostLine line;
  line.kind = kind;
  line.what = percent_text(share) + " of " + of;
  line.money = to_hundredths(share * static_cast<double>(cost.total().hundredths) / 100);
  line.borne = bearing_of(cost.lines, items);
  return line;
}

}  // namespace

CostGroup group_of(CostKind kind) {
  switch (kind) {
    case CostKind::labour:
      return CostGroup::labour;
    case CostKind::machine:
      return CostGroup::machine;
    case CostKind::wood:
    case CostKind::trial:
    case CostKind::sheet:
    case CostKind::edge_strip:
    case CostKind::glass:
      return CostGroup::material;
    case CostKind::fittings:
      return CostGroup::fittings;
    case CostKind::finish:
      return CostGroup::finish;
    case CostKind::bought_in:
      return CostGroup::bought_in;
    case CostKind::overhead:
      return CostGroup::overhead;
    default:
      return CostGroup::contingency;
  }
}

Money Cost::total() const {
  Money sum;
  for (const CostLine& line : lines)
    sum += line.money;
  return sum;
}

Money Cost::of(CostGroup group) const {
  Money sum;
  for (const CostLine& line : lines)
    if (group_of(line.kind) == group) sum += line.money;
  return sum;
}

bool Cost::has(CostGroup group) const {
  return std::any_of(lines.begin(), lines.end(),
                     [&](const CostLine& line) { return group_of(line.kind) == group; });
}

CostLine line_of(CostKind kind, std::string what, double amount, std::string unit, double for_one,
                 Bearing borne) {
  CostLine line;
  line.kind = kind;
  line.what = std::move(what);
  line.amount = amount;
  line.unit = std::move(unit);
  line.rate = rate_text(for_one);
  line.money = to_hundredths(amount * for_one);
  line.borne = std::move(borne);
  return line;
}

std::vector<CostLine> work_lines(const HoursPlan& hours, const Rates& rates, std::size_t items) {
  SpentBy<std::string> hands(items);
  SpentBy<double> machines(items);
  for (const HourLine& line : hours.lines) {
    hands.add(line.trade, line);
    if (line.machine_hour > 0) machines.add(line.machine_hour, line);
  }
  std::vector<CostLine> lines;
  for (const auto& [trade, spent] : hands.all())
    lines.push_back(line_of(CostKind::labour, trade.empty() ? "all hands" : trade, spent.hours(),
                            "h", rates.labour_hour(trade).value(), spent.by_item()));
  for (const auto& [rate, spent] : machines.all())
    lines.push_back(line_of(CostKind::machine, "machines at this rate", spent.hours(), "h", rate,
                            spent.by_item()));
  return lines;
}

Bearing bearing_of_hours(const HoursPlan& hours, std::size_t items) {
  Spent spent(items);
  for (const HourLine& line : hours.lines)
    spent.add(line);
  return spent.by_item();
}

void add_overhead(Cost& cost, const HoursPlan& hours, const Rates& rates, std::size_t items) {
  std::stable_sort(cost.lines.begin(), cost.lines.end(),
                   [](const CostLine& a, const CostLine& b) { return a.kind < b.kind; });
  if (rates.overhead && rates.overhead->per_hour)
    cost.lines.push_back(line_of(CostKind::overhead, "of every hour", hours.total.hours(), "h",
                                 *rates.overhead->per_hour, bearing_of_hours(hours, items)));
  if (rates.overhead && rates.overhead->share)
    cost.lines.push_back(
        share_line(CostKind::overhead, "all above", *rates.overhead->share, cost, items));
  if (rates.contingency > 0)
    cost.lines.push_back(
        share_line(CostKind::contingency, "all above", rates.contingency, cost, items));
}

std::vector<Money> borne_by_items(const Cost& cost, std::size_t items) {
  std::vector<Money> all(items);
  for (const CostLine& line : cost.lines) {
    const std::vector<Money> shares = shares_of(line.money, line.borne);
    for (std::size_t i = 0; i < items; ++i)
      all[i] += shares[i];
  }
  return all;
}

}  // namespace haunch
