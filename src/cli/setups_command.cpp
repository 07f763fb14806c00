#include <utility>
#include <vector>

#include "commands.h"
#include "complaints.h"
#include "order.h"
#include "progress.h"
#include "report_page.h"
#include "setups_report.h"
#include "shop_machines.h"

namespace haunch {
namespace {

/// One run: works all items, then orders the work on them.
class SetupsRun {
 public:
  SetupsRun(const Invocation& invocation, const Streams& streams)
      : invocation_(invocation),
        streams_(streams),
        complaints_(streams),
        order_(invocation.words, invocation, streams, complaints_) {}

  ExitStatus run() {
    if (!order_.open()) return complaints_.status();
    order_.work(kWantedForSetups, [this](ItemReport item) { items_.push_back(std::move(item)); });
    order_.sum_up("the others' set-ups are told");
    ShopMachines shop = machines_of(order_, "setups", complaints_);
    const bool nothing = order_.tally().nothing_worked() && invocation_.view.format != Format::json;
    if (nothing || shop.refused || complaints_.status() >= kFileFault) return complaints_.status();
    const Unit unit = order_.unit().value_or(Unit::mm);
    SetupsReport report =
        report_setups(std::move(items_), std::move(shop.machines), shop.file, unit);
    report.tally = order_.tally();
    report.errors = order_.problems();
    if (report.has_findings()) complaints_.raise(kCheckFailed);
    write_result(text_of(report, invocation_.view.unit.value_or(unit)), invocation_, streams_,
                 order_.files(), complaints_);
    return complaints_.status();
  }

 private:
  std::string text_of(const SetupsReport& report, Unit unit) const {
    const View& view = invocation_.view;
    if (view.format == Format::json) return setups_json(report, unit);
    if (view.format == Format::csv) return setups_csv(report, unit, view.csv);
    bool rounded = false;
    const std::string page =
        setups_page(report, LengthPrinter(unit, view.lengths, view.page_width, &rounded));
    return fitted(page + last_line({}, rounded, unit, view), view.page_width);
  }

  const Invocation& invocation_;
  const Streams& streams_;
  Complaints complaints_;
  Order order_;
  std::vector<ItemReport> items_;
};

}  // namespace

ExitStatus run_setups(const Invocation& invocation, const Streams& streams) {
  if (invocation.words.empty())
    return Complaints(streams).refuse(
        "setups: no spec is named; give a file, a folder, or - for standard input");
  Progress progress(streams.err, !invocation.quiet);
  Streams with_progress = streams;
  with_progress.progress = &progress;
  return SetupsRun(invocation, with_progress).run();
}

}  // namespace haunch
