#include "quote_report.h"

#include <algorithm>
#include <numeric>
#include <utility>

#include "quote_goods.h"
#include "shares.h"

namespace haunch {
namespace {

/// An order of a single item is counted by it, one of several as a whole.
bool is_single(const QuoteOrder& order) {
  return order.setups.items.size() == 1;
}

/// Of each item in one order.
std::vector<std::int64_t> counts_of(const QuoteOrder& order) {
  std::vector<std::int64_t> counts;
  for (const ItemReport& item : order.setups.items)
    counts.push_back(is_single(order) ? 1 : item.job->quantity);
  return counts;
}

std::vector<std::int64_t> times(std::vector<std::int64_t> counts, std::int64_t quantity) {
  for (std::int64_t& count : counts)
    count *= quantity;
  return counts;
}

/// The items of one order as hands have to do with them. What they point to is held here.
struct HandItems {
  std::vector<SetupItem> setup_items;
  std::vector<HourItem> items;
};

HandItems hand_items(const QuoteOrder& order, const Rates& rates) {
  HandItems all{setup_items(order.setups.items), {}};
  const std::vector<std::int64_t> counts = counts_of(order);
  for (std::size_t i = 0; i < all.setup_items.size(); ++i) {
    const Job& job = *order.setups.items[i].job;
    all.setup_items[i].quantity = counts[i];
    // One that the rates file does not know of is told of as lacking.
    const Finish* finish = finish_of(job, rates);
    const std::string& system = job.finish.system;
    const std::string said = system == kNoFinish ? "" : system;
    all.items.push_back({&all.setup_items[i], finish != nullptr ? finish->name : said,
                         job.finish.coats.value_or(0), job.finish.faces, !job.supply_only,
                         order.work[i]});
  }
  return all;
}

/// What goes with work that is no cut: fares, permits.
void add_expenses(Cost& cost, const HoursPlan& hours, std::size_t items) {
  for (const HourLine& line : hours.lines) {
    if (line.cost_each <= 0) continue;
    Bearing borne(items, 0.0);
    for (const ItemTime& each : line.items)
      borne[each.item] += each.quantity.value() + each.run.minutes();
    cost.lines.push_back(line_of(CostKind::bought_in, line.operation + ", expenses",
                                 line.quantity.value(), std::string(word_of(line.unit)),
                                 line.cost_each, std::move(borne)));
  }
}

template <typename More>
void put_to(Cost& cost, More more) {
  std::move(more.lines.begin(), more.lines.end(), std::back_inserter(cost.lines));
  std::move(more.missing.begin(), more.missing.end(), std::back_inserter(cost.missing));
}

/// Each item's hours, cost and price; what is borne of the price is as the cost.
std::vector<ItemShare> shares_in(const QuoteVariant& variant) {
  const std::size_t items = variant.items().size();
  const Bearing hours = bearing_of_hours(variant.hours, items);
  const std::vector<Money> costs = borne_by_items(variant.cost, items);
  Bearing by_cost;
  for (const Money& cost : costs)
    by_cost.push_back(static_cast<double>(cost.hundredths));
  const std::vector<Money> prices = shares_of(variant.price.asked, by_cost);
  constexpr double kMinutesAnHour = 60;
  std::vector<ItemShare> shares;
  for (std::size_t i = 0; i < items; ++i)
    shares.push_back({i, hours[i] / kMinutesAnHour, costs[i], prices[i]});
  return shares;
}

}  // namespace

std::int64_t QuoteVariant::count_of(std::size_t item) const {
  return counts_of(*asked.order)[item] * asked.quantity;
}

double QuoteVariant::hours_each() const {
  return hours.total.hours() / static_cast<double>(asked.quantity);
}

double QuoteVariant::cost_each() const {
  constexpr double kHundredths = 100;
  return static_cast<double>(price.cost.hundredths) / kHundredths /
         static_cast<double>(asked.quantity);
}

double QuoteVariant::price_each() const {
  constexpr double kHundredths = 100;
  return static_cast<double>(price.asked.hundredths) / kHundredths /
         static_cast<double>(asked.quantity);
}

std::vector<StageAmount> stages_in(const QuoteReport& report) {
  const AskedPrice& price = report.variants.front().price;
  const std::vector<double>& percents = report.paper.stages;
  if (percents.empty()) return {};
  const std::vector<Money> prices = stages_of(price.asked, percents);
  std::vector<StageAmount> all;
  for (std::size_t i = 0; i < percents.size(); ++i)
    all.push_back({percents[i], prices[i], {}});
  for (const TaxAmount& tax : price.tax) {
    const std::vector<Money> amounts = stages_of(tax.money, percents);
    for (std::size_t i = 0; i < all.size(); ++i)
      all[i].tax += amounts[i];
  }
  return all;
}

VariantAsked as_stated(std::shared_ptr<const QuoteOrder> order) {
  const std::vector<ItemReport>& items = order->setups.items;
  const std::int64_t quantity = is_single(*order) ? items.front().job->quantity : 1;
  return {"as stated", std::move(order), quantity};
}

VariantAsked so_many(const VariantAsked& stated, std::int64_t quantity) {
  const std::string number = std::to_string(quantity);
  return {is_single(*stated.order) ? number + " made" : number + " times", stated.order, quantity};
}

HoursPlan hours_of(const VariantAsked& asked, const Rates& rates) {
  const HandItems hands = hand_items(*asked.order, rates);
  return hours_of(asked.order->setups.plan, hands.items, rates, asked.quantity);
}

std::optional<HoursRange> QuoteReport::hours_range(const QuoteVariant& variant) const {
  if (jobs.empty()) return {};
  return range_of_hours(variant.hours.total.hours(), jobs);
}

std::vector<PlannedJob> planned_jobs(const QuoteOrder& order, const Rates& rates) {
  HandItems hands = hand_items(order, rates);
  std::vector<std::string> names;
  for (std::size_t i = 0; i < hands.items.size(); ++i) {
    const Job& job = *order.setups.items[i].job;
    hands.setup_items[i].quantity = job.quantity;
    names.push_back(job.id);
  }
  return planned_alone(hands.items, names, order.setups.machines, rates);
}

bool has_other_work(const QuoteOrder& order, const Rates& rates) {
  return !rates.work.empty() || std::any_of(order.work.begin(), order.work.end(),
                                            [](const auto& work) { return !work.empty(); });
}

QuoteVariant quote_of(const VariantAsked& asked, const WoodMeans& means) {
  const std::vector<ItemReport>& items = asked.order->setups.items;
  const std::vector<std::int64_t> counts = counts_of(*asked.order);
  QuoteVariant variant{asked, hours_of(asked, means.rates), {}, {}, {}, {}, {}};
  Cost& cost = variant.cost;
  cost.lines = work_lines(variant.hours, means.rates, items.size());
  WoodCost wood = wood_cost(items, counts, asked.quantity, means);
  variant.wood_from = wood.from;
  variant.stock_problems = wood.problems;
  put_to(cost, std::move(wood));
  put_to(cost, trial_cost(asked.order->setups, means));
  put_to(cost, goods_cost(items, times(counts, asked.quantity), means.rates));
  add_expenses(cost, variant.hours, items.size());
  add_overhead(cost, variant.hours, means.rates, items.size());
  variant.price = price_of(cost, variant.hours.total.hours(), means.rates);
  variant.shares = shares_in(variant);
  return variant;
}

}  // namespace haunch
