// What an order takes, costs and is to be asked for: what the papers, JSON and CSV of quote are
// views of.
//
//   QuoteOrder      items, worked and ordered into set-ups; a variant with other keys is another
//   QuoteVariant    an order so many times: hours, cost, price, and what each item bears of them
//   QuoteReport     all variants, the order as stated first
#pragma once

#include <chrono>
#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "actuals.h"
#include "cost.h"
#include "pricing.h"
#include "quote_wood.h"
#include "setups_report.h"

namespace haunch {

/// What is wanted of each item.
inline constexpr Wanted kWantedForQuote{.checks = true, .cutlist = true, .making = true};

struct QuoteOrder {
  SetupsReport setups;
  std::vector<std::vector<OtherWork>> work;  // of each item, that is no cut
};

/// A variant as it is asked for. Of a single item `quantity` is how many are made, of several how
/// often all of them.
struct VariantAsked {
  std::string name;
  std::shared_ptr<const QuoteOrder> order;
  std::int64_t quantity = 1;
};

/// What one item, all of its quantity, bears of an order.
struct ItemShare {
  std::size_t item = 0;
  double hours = 0;
  Money cost, price;
};

struct QuoteVariant {
  VariantAsked asked;
  HoursPlan hours;
  Cost cost;
  std::string wood_from;                // "a cutting plan for all of it"
  std::vector<Problem> stock_problems;  // with any, nothing of it is to be used
  AskedPrice price;
  std::vector<ItemShare> shares;  // of each item; add up to the cost and to the price

  const std::vector<ItemReport>& items() const { return asked.order->setups.items; }
  /// How many are made of an item.
  std::int64_t count_of(std::size_t item) const;
  /// Of one of its quantity.
  double hours_each() const, cost_each() const, price_each() const;
};

/// For whom a quote is written, and what it bears.
struct QuotePaper {
  bool for_customer = false;
  bool is_invoice = false;
  std::string number = {};
  std::optional<std::chrono::sys_days> date = {};
  std::vector<double> stages = {};  // in which the price is paid, in percent
};

struct QuoteReport {
  Rates rates;
  QuotePaper paper;
  Unit unit = Unit::mm;
  std::vector<QuoteVariant> variants;
  std::vector<JobOutcome> jobs;          // that rates were corrected by in this run
  std::vector<std::string> doubts = {};  // about what the notebook says of them

  /// How long a variant may take by these jobs; nothing where there are none.
  std::optional<HoursRange> hours_range(const QuoteVariant& variant) const;
};

/// One payment: all of them add up to the price, and to each tax on it.
struct StageAmount {
  double percent = 0;
  Money price, tax;

  Money to_pay() const { return price + tax; }
};
std::vector<StageAmount> stages_in(const QuoteReport& report);

/// Why one of a variant costs less or more than one of another, line by line; where not all of both
/// is counted, that.
std::vector<std::string> differences(const QuoteVariant& from, const QuoteVariant& to,
                                     const std::string& currency);

/// In which one of a variant costs more than one of the next fewer of the same order, unless that
/// is the order as stated, which all are compared with.
struct Rises {
  const QuoteVariant* from = nullptr;
  std::vector<std::string> what;
};
Rises rises_to(const QuoteReport& report, const QuoteVariant& variant);

/// Of an order as stated.
VariantAsked as_stated(std::shared_ptr<const QuoteOrder> order);
/// The same in another quantity.
VariantAsked so_many(const VariantAsked& stated, std::int64_t quantity);

/// Hours alone, of which some may lack a rate: with any there is no cost.
HoursPlan hours_of(const VariantAsked& asked, const Rates& rates);

QuoteVariant quote_of(const VariantAsked& asked, const WoodMeans& means);

/// Each item by itself, as a notebook of jobs tells of it.
std::vector<PlannedJob> planned_jobs(const QuoteOrder& order, const Rates& rates);

/// Whether anything beside cutting and making is counted: a survey, delivery, fixing.
bool has_other_work(const QuoteOrder& order, const Rates& rates);

std::string quote_json(const QuoteReport& report);
std::string quote_csv(const QuoteReport& report, CsvProfile profile);

}  // namespace haunch
