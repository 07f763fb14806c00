#include <algorithm>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "commands.h"
#include "comparison.h"
#include "comparison_csv.h"
#include "comparison_json.h"
#include "comparison_page.h"
#include "complaints.h"
#include "order.h"
#include "report_page.h"
#include "shop_machines.h"

namespace haunch {
namespace {

std::string usage_fault(const Invocation& invocation) {
  const std::vector<std::string>& words = invocation.words;
  if (words.size() < 2)
    return words.empty() ? "compare: no spec is named; give an old one and a new one"
                         : "compare: a new spec is missing, to compare with " + words.front();
  if (words.size() > 2)
    return "compare: takes an old spec and a new one; \"" + words[2] +
           "\" is one too many: put several into a folder";
  if (words.front() == "-" && words.back() == "-")
    return "compare: the old spec and the new one cannot both come from standard input";
  if (invocation.shop == "-")
    return "--shop: is read for the old spec and for the new one; give compare a file";
  return {};
}

class CompareRun {
 public:
  CompareRun(const Invocation& invocation, const Streams& streams)
      : invocation_(invocation),
        streams_(streams),
        complaints_(streams),
        old_({invocation.words.front()}, invocation, streams, complaints_),
        new_({invocation.words.back()}, invocation, streams, complaints_) {
    // How the old ones came out is told beside the new ones.
    old_.leave_checks();
    new_.leave_checks();
  }

  ExitStatus run() {
    const auto was = take(old_);
    const auto is = was ? take(new_) : std::nullopt;
    if (!is) return complaints_.status();
    const Comparison comparison = compare(*was, *is);
    write_result(text_of(comparison), invocation_, streams_, inputs(), complaints_);
    const bool fails = std::any_of(is->items.begin(), is->items.end(), [](const ItemReport& item) {
      return item.worst() == Status::fail;
    });
    if (fails || (invocation_.same && !comparison.is_same())) complaints_.raise(kCheckFailed);
    return complaints_.status();
  }

 private:
  /// Compared with half of an order, the other half would seem to be gone.
  std::optional<SetupsReport> take(Order& order) {
    if (!order.open()) return {};
    std::vector<ItemReport> items;
    order.work(kCompared, [&](ItemReport item) { items.push_back(std::move(item)); });
    order.sum_up("nothing is compared");
    ShopMachines shop = machines_of(order, "compare", complaints_);
    if (complaints_.status() >= kBadSpec) return {};
    return report_setups(std::move(items), std::move(shop.machines), shop.file,
                         order.unit().value_or(Unit::mm));
  }

  std::string text_of(const Comparison& comparison) const {
    const View& view = invocation_.view;
    const Unit unit = view.unit.value_or(new_.unit().value_or(Unit::mm));
    if (view.format == Format::json) return comparison_json(comparison, unit);
    if (view.format == Format::csv) return comparison_csv(comparison, unit, view.csv);
    bool rounded = false;
    const std::string page = comparison_page(
        comparison, {named(invocation_.words.front()), named(invocation_.words.back())},
        LengthPrinter(unit, view.lengths, view.page_width, &rounded));
    return fitted(page + last_line({}, rounded, unit, view), view.page_width);
  }

  static std::string named(const std::string& word) {
    return word == "-" ? "standard input" : word;
  }

  std::vector<std::string> inputs() const {
    std::vector<std::string> files = old_.files();
    const std::vector<std::string> more = new_.files();
    files.insert(files.end(), more.begin(), more.end());
    return files;
  }

  const Invocation& invocation_;
  const Streams& streams_;
  Complaints complaints_;
  Order old_, new_;
};

}  // namespace

ExitStatus run_compare(const Invocation& invocation, const Streams& streams) {
  const std::string fault = usage_fault(invocation);
  if (!fault.empty()) return Complaints(streams).refuse(fault);
  Progress progress(streams.err, !invocation.quiet);
  Streams with_progress = streams;
  with_progress.progress = &progress;
  return CompareRun(invocation, with_progress).run();
}

}  // namespace haunch
