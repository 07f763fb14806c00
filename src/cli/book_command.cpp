#include <iterator>
#include <optional>
#include <utility>
#include <vector>

#include "book.h"
#include "commands.h"
#include "complaints.h"
#include "messages.h"
#include "order.h"
#include "output_file.h"
#include "progress.h"
#include "shop_machines.h"
#include "stock_source.h"

namespace haunch {
namespace {

/// One run: works all items, orders the work on them, plans the lumber, and writes the book item by
/// item.
class BookRun {
 public:
  BookRun(const Invocation& invocation, const Streams& streams)
      : invocation_(invocation),
        streams_(streams),
        complaints_(streams),
        order_(invocation.words, invocation, streams, complaints_) {}

  ExitStatus run() {
    if (!order_.open() || !take_stock()) return complaints_.status();
    order_.work(wanted_for_book(), [this](ItemReport item) { take(std::move(item)); });
    // Set-ups and boards for half of an order would not do.
    order_.sum_up("no book is written");
    ShopMachines shop = machines_of(order_, "book", complaints_);
    if (shop.refused || items_.empty() || complaints_.status() >= kBadSpec)
      return complaints_.status();
    const Unit unit = order_.unit().value_or(Unit::mm);
    std::optional<LumberReport> lumber = planned(unit);
    if (!lumber) return complaints_.status();
    SetupsReport setups =
        report_setups(std::move(items_), std::move(shop.machines), std::move(shop.file), unit);
    if (setups.has_findings()) complaints_.raise(kCheckFailed);
    tell_unplaced(*lumber);
    setups.tally = order_.tally();
    const Unit told = invocation_.view.unit.value_or(unit);
    write({{invocation_.order, std::move(setups), std::move(*lumber)},
           invocation_.view,
           told,
           paper_for(told)});
    return complaints_.status();
  }

 private:
  bool take_stock() {
    if (invocation_.stock.empty()) return true;
    stock_ = read_stock_file(invocation_.stock, streams_.in, complaints_);
    return stock_.has_value();
  }

  void take(ItemReport item) {
    std::vector<LumberPart> parts = lumber_parts(item);
    std::move(parts.begin(), parts.end(), std::back_inserter(parts_));
    items_.push_back(std::move(item));
  }

  /// Some of what is wrong with the stock shows only with the parts; then there is no plan.
  std::optional<LumberReport> planned(Unit unit) {
    std::optional<StockFile> stock;
    if (stock_) stock = std::move(stock_->stock);
    if (stock) unit = stock->unit;
    LumberReport report =
        report_lumber(std::move(parts_), std::move(stock), unit, invocation_.lumber);
    if (stock_ && !complaints_.note(stock_->record.place(report.problems))) return {};
    return report;
  }

  void tell_unplaced(const LumberReport& lumber) {
    if (lumber.unplaced.empty()) return;
    complaints_.raise(kCheckFailed);
    if (!invocation_.quiet)
      complain("haunch: no board for " + std::to_string(lumber.unplaced.size()) + " of " +
                   std::to_string(lumber.parts.size()) +
                   " parts; the book tells which under NOT PLACED",
               streams_);
  }

  Paper paper_for(Unit unit) const {
    const std::string usual = unit == Unit::inch ? "letter" : "a4";
    return *paper_called(invocation_.paper.empty() ? usual : invocation_.paper);
  }

  void write(Book book) {
    std::vector<std::string> inputs = order_.files();
    inputs.push_back(invocation_.stock);
    OutputFile file(invocation_.output, streams_.out, identities_of(inputs, streams_));
    append(file, book.front());
    for (std::size_t item = 0; item < book.items(); ++item)
      append(file, book.take_item(item));
    append(file, Book::end());
    {
      const auto lock = still(streams_);
      file.finish();
    }
    complaints_.note(file);
  }

  void append(OutputFile& file, std::string_view text) const {
    const auto lock = still(streams_);
    file.append(text);
  }

  const Invocation& invocation_;
  const Streams& streams_;
  Complaints complaints_;
  Order order_;
  std::optional<ReadStock> stock_;
  std::vector<ItemReport> items_;
  std::vector<LumberPart> parts_;
};

}  // namespace

ExitStatus run_book(const Invocation& invocation, const Streams& streams) {
  if (invocation.words.empty())
    return Complaints(streams).refuse(
        "book: no spec is named; give a file, a folder, or - for standard input");
  if (invocation.stock == "-" &&
      (invocation.shop == "-" ||
       std::find(invocation.words.begin(), invocation.words.end(), "-") != invocation.words.end()))
    return Complaints(streams).refuse(
        "--stock: the stock file and another cannot both come from standard input");
  Progress progress(streams.err, !invocation.quiet);
  Streams with_progress = streams;
  with_progress.progress = &progress;
  return BookRun(invocation, with_progress).run();
}

}  // namespace haunch
