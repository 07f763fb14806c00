#include <cmath>
#include <functional>

#include "quote_report.h"
#include "quote_words.h"

namespace haunch {
namespace {

constexpr double kHundredths = 100;
/// Of money or hours: what lines lose or gain by being rounded.
constexpr double kNothing = 0.01;

double each(double whole, const QuoteVariant& variant) {
  return whole / static_cast<double>(variant.asked.quantity);
}

double hours_each(const QuoteVariant& variant,
                  const std::function<WorkTime(const HourLine&)>& of_line) {
  WorkTime sum;
  for (const HourLine& line : variant.hours.lines)
    sum += of_line(line);
  return each(sum.hours(), variant);
}

WorkTime set_up(const HourLine& line) {
  return line.setup;
}

bool is_once(const HourLine& line) {
  return line.unit == WorkUnit::order || line.unit == WorkUnit::trip;
}

WorkTime done_once(const HourLine& line) {
  return is_once(line) ? line.run : WorkTime();
}

WorkTime done_each(const HourLine& line) {
  return is_once(line) ? WorkTime() : line.run;
}

/// "set-ups 0.61 h less"; nothing where they are the same.
std::string changed(const std::string& what, double from, double to, const std::string& unit) {
  const double by = to - from;
  if (std::abs(by) < kNothing) return {};
  return what + " " + hours_text(std::abs(by)) + " " + unit + (by < 0 ? " less" : " more");
}

class Differences {
 public:
  Differences(const QuoteVariant& from, const QuoteVariant& to, const std::string& currency)
      : from_(from), to_(to), currency_(currency) {}

  std::vector<std::string> all() {
    const bool same_work = from_.asked.order == to_.asked.order;
    hours(same_work ? "set-ups shared:" : "set-ups:", set_up);
    hours("what is done once an order:", done_once);
    hours("work on each:", done_each);
    for (std::size_t group = 0; group < std::size(kWords<CostGroup>); ++group)
      money(static_cast<CostGroup>(group), same_work);
    return std::move(all_);
  }

 private:
  void hours(const std::string& what, const std::function<WorkTime(const HourLine&)>& of_line) {
    add(changed(what, hours_each(from_, of_line), hours_each(to_, of_line), "h"));
  }

  void money(CostGroup group, bool same_work) {
    const double from = each(static_cast<double>(from_.cost.of(group).hundredths), from_);
    const double to = each(static_cast<double>(to_.cost.of(group).hundredths), to_);
    std::string words =
        changed(std::string(word_of(group)) + ":", from / kHundredths, to / kHundredths, currency_);
    if (!words.empty() && same_work && group == CostGroup::material)
      words += to > from ? ", as boards are bought whole and more of them is left over"
                         : ", as boards are used further";
    add(std::move(words));
  }

  void add(std::string words) {
    if (!words.empty()) all_.push_back(std::move(words));
  }

  const QuoteVariant& from_;
  const QuoteVariant& to_;
  const std::string& currency_;
  std::vector<std::string> all_;
};

}  // namespace

std::vector<std::string> differences(const QuoteVariant& from, const QuoteVariant& to,
                                     const std::string& currency) {
  if (!from.cost.missing.empty() || !to.cost.missing.empty())
    return {"not compared, as not all of it is counted"};
  return Differences(from, to, currency).all();
}

Rises rises_to(const QuoteReport& report, const QuoteVariant& variant) {
  Rises rises;
  for (const QuoteVariant& other : report.variants) {
    const bool fewer =
        other.asked.order == variant.asked.order && other.asked.quantity < variant.asked.quantity;
    if (fewer && (rises.from == nullptr || other.asked.quantity > rises.from->asked.quantity))
      rises.from = &other;
  }
  if (rises.from == nullptr || rises.from == &report.variants.front()) return {};
  for (std::string& each : differences(*rises.from, variant, report.rates.currency))
    if (each.find(" more") != std::string::npos) rises.what.push_back(std::move(each));
  const double price = variant.price_each() - rises.from->price_each();
  if (price >= kNothing && variant.cost_each() <= rises.from->cost_each())
    rises.what.push_back(changed("price as rounded:", 0, price, report.rates.currency));
  return rises;
}

}  // namespace haunch
