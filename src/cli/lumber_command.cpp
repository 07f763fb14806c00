#include <algorithm>
#include <iterator>
#include <optional>
#include <utility>

#include "commands.h"
#include "complaints.h"
#include "file_place.h"
#include "lumber_svg.h"
#include "lumber_text.h"
#include "messages.h"
#include "order.h"
#include "output_file.h"
#include "parts_list.h"
#include "report_page.h"
#include "second_result.h"
#include "single_file.h"
#include "stock_source.h"

namespace haunch {
namespace {

/// One run: reads the specs and the stock file, plans, writes the plan and the stock that is left.
class LumberRun {
 public:
  LumberRun(const Invocation& invocation, const Streams& streams)
      : invocation_(invocation),
        streams_(streams),
        complaints_(streams),
        order_(invocation.words, invocation, streams, complaints_) {}

  ExitStatus run() {
    if (!order_.open() || !take_stock_file() || !take_parts_file()) return complaints_.status();
    order_.work({.checks = true}, [this](const ItemReport& item) { take(item); });
    // Boards for half of an order would not do.
    order_.sum_up("no plan is made");
    if (complaints_.status() >= kBadSpec) return complaints_.status();
    const Unit unit =
        stock_ ? stock_->stock.unit : parts_unit_.value_or(order_.unit().value_or(Unit::mm));
    std::optional<StockFile> stock;
    if (stock_) stock = std::move(stock_->stock);
    LumberReport report =
        report_lumber(std::move(parts_), std::move(stock), unit, invocation_.lumber);
    // Some of what is wrong with the stock shows only with the parts.
    if (stock_ && !complaints_.note(stock_->record.place(report.problems)))
      return complaints_.status();
    write(report, invocation_.view.unit.value_or(unit));
    if (!report.unplaced.empty()) complaints_.raise(kCheckFailed);
    return complaints_.status();
  }

 private:
  // ---- what it is planned from

  bool take_stock_file() {
    if (invocation_.stock.empty()) return true;
    stock_ = read_stock_file(invocation_.stock, streams_.in, complaints_);
    return stock_.has_value();
  }

  /// A plain cut list, whose parts go with those of the specs.
  bool take_parts_file() {
    if (invocation_.parts.empty()) return true;
    std::optional<Record> record;
    PartsReading reading;
    if (invocation_.parts.ends_with(".csv")) {
      record = read_table(invocation_.parts, "a list of parts", complaints_);
      if (record) reading = read_parts_csv(record->text->text);
    } else {
      SingleObject single = read_single(invocation_.parts, "a list of parts", false, streams_.in);
      for (const FileFault& fault : single.faults)
        complaints_.note(fault);
      complaints_.note(single.problems);
      record = std::move(single.record);
      if (record) reading = read_parts(*record->item);
    }
    if (!record || !complaints_.note(record->place(reading.problems))) return false;
    parts_unit_ = reading.unit;
    parts_ = std::move(reading.parts);
    for (const LumberPart& part : parts_)
      order_.reserve(part.item);
    return true;
  }

  void take(const ItemReport& item) {
    std::vector<LumberPart> parts = lumber_parts(item);
    std::move(parts.begin(), parts.end(), std::back_inserter(parts_));
  }

  // ---- out

  std::vector<std::string> inputs() const {
    std::vector<std::string> files = order_.files();
    files.insert(files.end(), {invocation_.stock, invocation_.parts});
    return files;
  }

  std::string plan_text(const LumberReport& report, Unit unit) const {
    const View& view = invocation_.view;
    if (view.format == Format::json) return lumber_json(report, unit);
    if (view.format == Format::csv) return lumber_csv(report, unit, view.csv);
    if (view.format == Format::svg)
      return lumber_svg(report, LengthPrinter(unit, view.lengths), invocation_.paper);
    bool rounded = false;
    const std::string page =
        lumber_page(report, LengthPrinter(unit, view.lengths, view.page_width, &rounded));
    return fitted(page + last_line({}, rounded, unit, view), view.page_width);
  }

  /// The stock that is left is not in place without the plan that takes from it.
  void write(const LumberReport& report, Unit unit) {
    const std::string plan = plan_text(report, unit);
    if (invocation_.leftover.empty())
      write_result(plan, invocation_, streams_, inputs(), complaints_);
    else
      write_both_results(plan,
                         {invocation_.leftover, stock_text(stock_left(report)), "the plan",
                          "nothing was taken off the stock"},
                         invocation_, streams_, inputs(), complaints_);
  }

  const Invocation& invocation_;
  const Streams& streams_;
  Complaints complaints_;
  Order order_;
  std::optional<ReadStock> stock_;
  std::optional<Unit> parts_unit_;
  std::vector<LumberPart> parts_;
};

std::string usage_fault(const Invocation& invocation) {
  if (invocation.words.empty() && invocation.parts.empty())
    return "lumber: no spec is named; give a file, a folder, - for standard input, or --parts FILE";
  const bool stdin_spec =
      std::find(invocation.words.begin(), invocation.words.end(), "-") != invocation.words.end();
  if (invocation.stock == "-" && (stdin_spec || invocation.shop == "-"))
    return "--stock: the stock file and another cannot both come from standard input";
  if (invocation.parts == "-" && (stdin_spec || invocation.shop == "-" || invocation.stock == "-"))
    return "--parts: the list of parts and another cannot both come from standard input";
  if (!invocation.paper.empty() && invocation.view.format != Format::svg)
    return "--paper: is for boards that are drawn; add --format svg";
  if (invocation.view.format == Format::svg && invocation.stock.empty())
    return "lumber: --format svg draws the boards of a plan; give --stock FILE to plan from";
  if (!invocation.leftover.empty() && invocation.stock.empty())
    return "--leftover: goes with --stock; without stock nothing is left";
  return second_fault("--leftover", invocation.leftover, invocation, "the plan");
}

}  // namespace

ExitStatus run_lumber(const Invocation& invocation, const Streams& streams) {
  const std::string fault = usage_fault(invocation);
  if (!fault.empty()) return Complaints(streams).refuse(fault);
  Progress progress(streams.err, !invocation.quiet);
  Streams with_progress = streams;
  with_progress.progress = &progress;
  return LumberRun(invocation, with_progress).run();
}

}  // namespace haunch
