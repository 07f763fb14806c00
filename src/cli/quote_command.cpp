#include <algorithm>
#include <memory>
#include <optional>
#include <utility>

#include "commands.h"
#include "complaints.h"
#include "corrections.h"
#include "drawing_svg.h"
#include "json_reader.h"
#include "order.h"
#include "quote_customer.h"
#include "quote_html.h"
#include "quote_options.h"
#include "quote_page.h"
#include "quote_report.h"
#include "quote_words.h"
#include "rates_file.h"
#include "report_page.h"
#include "second_result.h"
#include "shop_machines.h"
#include "single_file.h"
#include "stock_source.h"
#include "variants_file.h"

namespace haunch {
namespace {

/// One run: reads rates, stock and specs, reckons every variant, and writes a paper.
class QuoteRun {
 public:
  QuoteRun(const Invocation& invocation, QuoteOptions options, const Streams& streams)
      : invocation_(invocation),
        options_(std::move(options)),
        streams_(streams),
        complaints_(streams) {}

  ExitStatus run() {
    if (!take_rates() || !take_stock() || !take_variants()) return complaints_.status();
    const auto order = worked(invocation_);
    if (!order || !take_actuals(*order)) return complaints_.status();
    report_.rates = *rates_;
    report_.paper = options_.paper;
    report_.unit = unit_;
    if (!add(as_stated(order)) || !add_quantities(order) || !add_variants(order))
      return complaints_.status();
    if (!may_be_shown()) return complaints_.status();
    write();
    return complaints_.status();
  }

 private:
  // ---- what it is reckoned from

  bool take_rates() {
    SingleObject single = read_single(invocation_.quote.rates, "a rates file", false, streams_.in);
    for (const FileFault& fault : single.faults)
      complaints_.note(fault);
    if (!complaints_.note(single.problems) || !single.record) return false;
    rates_record_ = std::move(single.record);
    RatesReading reading = read_rates(*rates_record_->item);
    rates_ = std::move(reading.rates);
    if (rates_ && rates_->billable == 0)
      reading.problems.push_back(
          {"/billable", "0 leaves no hour that a price could be asked for", {}});
    return complaints_.note(rates_record_->place(reading.problems)) && rates_;
  }

  bool take_stock() {
    if (invocation_.stock.empty()) return true;
    auto read = read_stock_file(invocation_.stock, streams_.in, complaints_);
    if (!read) return false;
    stock_record_ = std::move(read->record);
    stock_ = std::move(read->stock);
    if (stock_->currency.empty() || stock_->currency == rates_->currency) return true;
    complaints_.refuse(invocation_.stock + " has its prices in " + stock_->currency + ", " +
                       invocation_.quote.rates + " in " + rates_->currency +
                       "; one quote has one currency");
    return false;
  }

  bool take_variants() {
    if (invocation_.quote.variants.empty()) return true;
    auto record = read_table(invocation_.quote.variants, "a list of variants", complaints_);
    if (!record) return false;
    Reading reading = read_json(record->text->text);
    record->item = std::move(reading.value);
    if (!complaints_.note(record->place(reading.problems)) || !record->item) return false;
    VariantsReading variants =
        read_variants(*record->item, invocation_.quote.variants,
                      std::make_shared<const std::string>(record->text->text));
    wishes_ = std::move(variants.variants);
    return complaints_.note(record->place(variants.problems));
  }

  /// The items of the specs; nothing where any is refused: half an order has no price.
  std::shared_ptr<const QuoteOrder> worked(const Invocation& invocation) {
    Order order(invocation.words, invocation, streams_, complaints_);
    if (!order.open()) return nullptr;
    QuoteOrder quoted;
    std::vector<ItemReport> items;
    WorkReading its_work;
    order.also_read([&](const Job& job) {
      its_work = job.other_work ? read_other_work(*job.other_work, *rates_) : WorkReading();
      return its_work.problems;
    });
    order.work(kWantedForQuote, [&](ItemReport item) {
      items.push_back(std::move(item));
      quoted.work.push_back(its_work.work);
    });
    order.sum_up("nothing is priced");
    ShopMachines shop = machines_of(order, "quote", complaints_);
    if (items.empty() || complaints_.status() >= kBadSpec || shop.refused) return nullptr;
    unit_ = order.unit().value_or(Unit::mm);
    files_ = order.files();
    quoted.setups = report_setups(std::move(items), std::move(shop.machines), shop.file, unit_);
    return std::make_shared<const QuoteOrder>(std::move(quoted));
  }

  /// From here on with the rates that jobs have put right.
  bool take_actuals(const QuoteOrder& order) {
    if (invocation_.quote.actual.empty()) return true;
    auto corrected = corrections_of(invocation_.quote.actual, *rates_, planned_jobs(order, *rates_),
                                    complaints_);
    if (!corrected) return false;
    rates_ = std::move(corrected->rates);
    report_.jobs = std::move(corrected->jobs);
    report_.doubts = std::move(corrected->doubts);
    return true;
  }

  /// Reckons one; false where a figure lacks that no cost can be told without.
  bool add(const VariantAsked& asked) {
    const std::vector<Problem> lacking = problems_of(hours_of(asked, *rates_));
    if (!complaints_.note(rates_record_->place(lacking))) return false;
    QuoteVariant variant = quote_of(asked, {*rates_, stock_, unit_, invocation_.lumber});
    if (!variant.stock_problems.empty())
      return complaints_.note(stock_record_->place(variant.stock_problems));
    report_.variants.push_back(std::move(variant));
    return true;
  }

  /// The order as stated is the first of them.
  bool add_quantities(const std::shared_ptr<const QuoteOrder>& order) {
    const VariantAsked stated = as_stated(order);
    for (const std::int64_t quantity : options_.quantities)
      if (quantity != stated.quantity && !add(so_many(stated, quantity))) return false;
    return true;
  }

  bool add_variants(const std::shared_ptr<const QuoteOrder>& order) {
    for (const VariantWish& wish : wishes_) {
      const auto its = wish.with.keys.empty() ? order : worked_with(wish.with);
      if (!its) return false;
      VariantAsked asked = as_stated(its);
      asked.name = wish.name;
      asked.quantity = wish.quantity.value_or(asked.quantity);
      if (!add(asked)) return false;
    }
    return true;
  }

  /// The specs again, with keys changed.
  std::shared_ptr<const QuoteOrder> worked_with(const SetKeys& keys) {
    Invocation again = invocation_;
    again.ways.with.push_back(keys);
    return worked(again);
  }

  /// No customer is promised what will not go together, or at a price that is too low.
  bool may_be_shown() {
    bool lacks = false, fails = false;
    for (const QuoteVariant& variant : report_.variants)
      for (const MissingFigure& each : variant.cost.missing) {
        lacks = true;
        complaints_.tell("not counted: " + each.what + "; " + each.remedy);
      }
    for (const QuoteVariant& variant : report_.variants)
      fails = fails || !failed_checks(variant).empty();
    if (lacks) complaints_.raise(kCheckFailed);
    if (!options_.paper.for_customer) return true;
    if (lacks)
      complaints_.refuse(
          "the price is too low by what is not counted; no customer's paper is made");
    if (fails) complaints_.refuse("a check fails; no customer's paper is made");
    return !lacks && !fails;
  }

  // ---- out

  std::vector<std::string> inputs() const {
    std::vector<std::string> files = files_;
    files.insert(files.end(), {invocation_.quote.rates, invocation_.stock,
                               invocation_.quote.variants, invocation_.quote.actual});
    return files;
  }

  /// The corrected rates are not in place without the quote that is made by them.
  void write() {
    if (invocation_.quote.corrected.empty())
      write_result(text(), invocation_, streams_, inputs(), complaints_);
    else
      write_both_results(text(),
                         {invocation_.quote.corrected, rates_text(*rates_), "the quote",
                          "the rates are as they were"},
                         invocation_, streams_, inputs(), complaints_);
  }

  std::string text() const {
    const View& view = invocation_.view;
    if (view.format == Format::json) return quote_json(report_);
    if (view.format == Format::csv) return quote_csv(report_, view.csv);
    const Unit unit = view.unit.value_or(unit_);
    bool rounded = false;
    const LengthPrinter lengths(unit, view.lengths, view.page_width, &rounded);
    const PageParts parts = options_.paper.for_customer ? customer_parts(report_, lengths)
                                                        : quote_parts(report_, lengths);
    if (view.format == Format::html) return quote_html(parts, title(), drawings(lengths));
    std::string page = text_of(parts).substr(1);  // no empty line before the first
    if (!options_.paper.for_customer) page += last_line({}, rounded, unit, view);
    return fitted(page, view.page_width);
  }

  /// Of each item its elevation, as a customer sees it.
  std::vector<std::string> drawings(const LengthPrinter& lengths) const {
    std::vector<std::string> all;
    if (!options_.paper.for_customer) return all;
    const Paper paper = *paper_called(lengths.unit() == Unit::mm ? "a4" : "letter");
    for (const ItemReport& item : report_.variants.front().items())
      all.push_back(drawing_of(item, lengths, paper).front().svg);
    return all;
  }

  std::string title() const {
    const QuotePaper& paper = options_.paper;
    return paper.is_invoice ? "Invoice " + paper.number : "Quote";
  }

  const Invocation& invocation_;
  QuoteOptions options_;
  const Streams& streams_;
  Complaints complaints_;
  std::vector<VariantWish> wishes_;
  std::optional<Record> rates_record_, stock_record_;
  std::optional<Rates> rates_;
  std::optional<StockFile> stock_;
  Unit unit_ = Unit::mm;
  std::vector<std::string> files_;
  QuoteReport report_;
};

std::string usage_fault(const Invocation& invocation) {
  if (invocation.words.empty())
    return "quote: no spec is named; give a file, a folder, or - for standard input";
  if (invocation.quote.rates.empty())
    return "quote: nothing tells what hours and goods cost; give --rates FILE";
  std::vector<std::string> inputs = invocation.words;
  inputs.insert(inputs.end(), {invocation.quote.rates, invocation.stock, invocation.shop});
  const bool by_stdin = std::count(invocation.words.begin(), invocation.words.end(), "-") > 0;
  if (by_stdin && !invocation.quote.variants.empty())
    return "--variants: reads the specs again, which standard input cannot; give them as files";
  if (std::count(inputs.begin(), inputs.end(), "-") > 1)
    return "quote: only one of the specs, --rates, --stock and --shop can come from standard input";
  if (invocation.quote.corrected.empty()) return {};
  if (invocation.quote.actual.empty())
    return "--corrected: goes with --actual; without jobs there is nothing to correct";
  return second_fault("--corrected", invocation.quote.corrected, invocation, "the quote");
}

}  // namespace

ExitStatus run_quote(const Invocation& invocation, const Streams& streams) {
  const std::string fault = usage_fault(invocation);
  if (!fault.empty()) return Complaints(streams).refuse(fault);
  auto options = quote_options(invocation.quote);
  if (const auto* error = std::get_if<UsageError>(&options))
    return Complaints(streams).refuse(error->message);
  Progress progress(streams.err, !invocation.quiet);
  Streams with_progress = streams;
  with_progress.progress = &progress;
  return QuoteRun(invocation, std::move(std::get<QuoteOptions>(options)), with_progress).run();
}

}  // namespace haunch
