#include <utility>

#include "commands.h"
#include "complaints.h"
#include "label_sheets.h"
#include "labels_text.h"
#include "order.h"
#include "report_page.h"
#include "sticker_options.h"

namespace haunch {
namespace {

/// One run: works the items of an order, and writes their labels.
class LabelsRun {
 public:
  LabelsRun(const Invocation& invocation, const AskedSheet& asked, const Streams& streams)
      : invocation_(invocation),
        asked_(asked),
        streams_(streams),
        complaints_(streams),
        order_(invocation.words, invocation, streams, complaints_) {}

  ExitStatus run() {
    if (!order_.open()) return complaints_.status();
    LabelOrder labels{invocation_.order, {}};
    order_.work({.checks = true, .cutlist = true},
                [&](const ItemReport& item) { labels.items.push_back(labels_of(item)); });
    order_.sum_up("the refused have no labels");
    if (complaints_.status() >= kFileFault || labels.items.empty()) return complaints_.status();
    const std::string text = text_of(labels);
    if (!text.empty()) write_result(text, invocation_, streams_, order_.files(), complaints_);
    return complaints_.status();
  }

 private:
  /// Empty where they can't be printed so, which is told.
  std::string text_of(const LabelOrder& labels) {
    const View& view = invocation_.view;
    const Unit unit = view.unit.value_or(order_.unit().value_or(Unit::mm));
    if (view.format == Format::json) return labels_json(labels, unit);
    if (view.format == Format::csv) return labels_csv(labels, unit, view.csv);
    bool rounded = false;
    const LengthPrinter lengths(unit, view.lengths, view.page_width, &rounded);
    if (view.format == Format::html) return sheets_of(labels, lengths);
    const std::string page = labels_page(labels, lengths);
    return fitted(page + last_line({}, rounded, unit, view), view.page_width);
  }

  std::string sheets_of(const LabelOrder& labels, const LengthPrinter& lengths) {
    LabelSheets made = label_sheets(labels.items, asked_.sheet, asked_.grid, labels.name, lengths);
    if (!made.too_long.empty()) {
      complaints_.refuse("--sticker: " + size_words(asked_.sheet.sticker) +
                         " has no room for mark, size and face side of " + made.too_long + "; " +
                         size_words(made.would_do) + " has");
      return {};
    }
    if (made.shortened > 0 && !invocation_.quiet)
      complain("haunch: " + std::to_string(made.shortened) + " of " +
                   std::to_string(made.stickers) +
                   " stickers have no room for all; they end with \"…\", and --format table has "
                   "the rest",
               streams_);
    return std::move(made.html);
  }

  static std::string size_words(PrintSize size) {
    return print_figure(size.width) + " x " + print_figure(size.height) + " mm";
  }

  const Invocation& invocation_;
  const AskedSheet& asked_;
  const Streams& streams_;
  Complaints complaints_;
  Order order_;
};

std::string usage_fault(const Invocation& invocation) {
  if (invocation.words.empty())
    return "labels: no spec is named; give a file, a folder, or - for standard input";
  if (invocation.view.format == Format::html) return {};
  const std::pair<const char*, const std::string*> of_sheets[] = {
      {"--sticker", &invocation.sticker},
      {"--paper", &invocation.paper},
      {"--margin", &invocation.margin},
      {"--gap", &invocation.gap}};
  for (const auto& [option, value] : of_sheets)
    if (!value->empty()) return std::string(option) + ": goes with --format html; give both";
  return {};
}

}  // namespace

ExitStatus run_labels(const Invocation& invocation, const Streams& streams) {
  const std::string fault = usage_fault(invocation);
  if (!fault.empty()) return Complaints(streams).refuse(fault);
  const auto asked = asked_sheet(invocation);
  if (const auto* wrong = std::get_if<std::string>(&asked))
    return Complaints(streams).refuse(*wrong);
  Progress progress(streams.err, !invocation.quiet);
  Streams with_progress = streams;
  with_progress.progress = &progress;
  return LabelsRun(invocation, std::get<AskedSheet>(asked), with_progress).run();
}

}  // namespace haunch
