#include "quote_page.h"

#include <algorithm>
#include <array>
#include <utility>

#include "day.h"
#include "quote_customer.h"
#include "quote_due.h"
#include "quote_goods.h"
#include "quote_jobs.h"
#include "quote_words.h"

namespace haunch {
namespace {

using Words = std::vector<std::string>;

/// What the shop sees: all of it.
class ShopPaper {
 public:
  ShopPaper(const QuoteReport& report, const LengthPrinter& lengths)
      : report_(report), rates_(report.rates), lengths_(lengths) {}

  PageParts parts() const {
    PageParts all{head()};
    const QuoteVariant& stated = report_.variants.front();
    for (const QuoteVariant& variant : report_.variants)
      if (!variant.cost.missing.empty()) all.push_back(missing(variant));
    append(all, {work(stated), hours(stated)});
    append(all, jobs_parts(report_, lengths_));
    append(all, {cost(stated), price(stated)});
    if (!report_.paper.stages.empty())
      all.push_back({"PAID IN STAGES", stages_table(report_, lengths_)});
    if (stated.items().size() > 1) all.push_back(shares(stated));
    if (const std::vector<OrderDue> orders = orders_due(report_); !orders.empty())
      all.push_back(due(orders));
    if (report_.variants.size() > 1) all.push_back(side_by_side());
    return all;
  }

 private:
  std::string money(const Money& money) const { return money_text(money) + " " + rates_.currency; }
  PageText words(std::string text) const {
    return PageText::hanging(std::move(text), 2, lengths_.page_width());
  }

  PagePart head() const {
    const QuoteVariant& stated = report_.variants.front();
    std::string heading;
    for (const QuoteVariant& variant : report_.variants)
      for (const std::string& fails : failed_checks(variant))
        heading += (&variant == &stated ? "" : variant.asked.name + ": ") + fails + "\n";
    if (!has_other_work(*stated.asked.order, rates_))
      heading =
          "only what is cut and put together is priced: no survey, delivery or fixing is told of\n";
    heading += "hours, cost and price of " + std::to_string(stated.items().size()) +
               (stated.items().size() == 1 ? " item" : " items") + ", in " + rates_.currency;
    PagePart part{heading};
    if (is_example())
      part.body += words("rates that are an example stand among these; time your own work");
    if (!rates_.note.empty()) part.body += words(rates_.note);
    return part;
  }

  bool is_example() const {
    for (const HourLine& line : report_.variants.front().hours.lines)
      if (line.standing.source == RateSource::example) return true;
    return false;
  }

  PagePart missing(const QuoteVariant& variant) const {
    PagePart part{"NOT COUNTED, so that cost and price are too low: " + variant.asked.name};
    for (const MissingFigure& each : variant.cost.missing)
      part.body += words(each.what + ": " + each.remedy);
    return part;
  }

  PagePart work(const QuoteVariant& variant) const {
    PagePart part{"WORK"};
    for (const QuotedItem& item : items_told(variant, rates_))
      part.body +=
          words(std::to_string(item.count) + " x " + item.id + ": " + item.name + ", " +
                size_words(item, lengths_) + "; " + joined_words(item.woods, ", ") +
                "; finish: " + item.finish +
                (item.finish_is_first ? ", the first of the rates file, as none is named" : "") +
                (item.fittings.empty() ? "" : "; " + joined_words(item.fittings, ", ")) +
                (item.hung ? "" : "; not hung") + (item.due.empty() ? "" : "; due " + item.due));
    return part;
  }

  PagePart hours(const QuoteVariant& variant) const {
    TextTable table({"operation", "set up, min", "done, min", "minutes", "by"});
    const RateSource usual = usual_source(variant.hours);
    for (const HourLine& line : variant.hours.lines)
      table.add(
          {line.operation, set_up_words(line),
           quantity_text(line.quantity) + " " + unit_of(line) + " x " + minutes_text(line.each),
           Cell::of_figure(minutes_text(line.total())), by_words(line, usual)});
    PagePart part{"HOURS, " + hours_text(variant.hours.total.hours()) +
                  " of hands: " + minutes_text(variant.hours.total) + " min"};
    part.body = PageText::table(table, lengths_, 2);
    if (usual != RateSource::own) part.body += words(source_words(usual));
    if (const Words untimed = set_up_only(variant.hours); !untimed.empty())
      part.body +=
          words("set up, and then done in no time by the rates: " + joined_words(untimed, ", "));
    for (const WaitingTime& wait : variant.hours.waiting)
      part.body += words("and of the clock " + figure_text(wait.hours, 1) + " h: " + wait.what);
    return part;
  }

  /// What the rates have minutes for to set up and none to do.
  static Words set_up_only(const HoursPlan& hours) {
    Words operations;
    for (const HourLine& line : hours.lines)
      if (line.setup_each > WorkTime() && line.each == WorkTime())
        operations.push_back(line.operation);
    return operations;
  }

  /// "3 x 12": so often, so many minutes.
  static std::string set_up_words(const HourLine& line) {
    if (line.setup_each == WorkTime()) return {};
    return std::to_string(line.setups) + " x " + minutes_text(line.setup_each);
  }

  /// Its trade, and where the rate comes from unless it is whence most come.
  static std::string by_words(const HourLine& line, RateSource usual) {
    const RateSource source = line.standing.source;
    if (source == usual) return line.trade;
    return line.trade + (line.trade.empty() ? "" : ", ") + std::string(word_of(source));
  }

  /// Where most rates of these lines come from.
  static RateSource usual_source(const HoursPlan& hours) {
    std::array<std::ptrdiff_t, std::size(kWords<RateSource>)> counts{};
    for (const HourLine& line : hours.lines)
      ++counts[static_cast<std::size_t>(line.standing.source)];
    return static_cast<RateSource>(std::max_element(counts.begin(), counts.end()) - counts.begin());
  }

  static std::string source_words(RateSource source) {
    switch (source) {
      case RateSource::corrected:
        return "by rates that jobs have corrected, where nothing else is said";
      case RateSource::example:
        return "by rates that are an example, where nothing else is said";
      default:
        return {};
    }
  }

  static std::string unit_of(const HourLine& line) {
    return line.unit == WorkUnit::square_metre ? "m2" : std::string(word_of(line.unit));
  }

  PagePart cost(const QuoteVariant& variant) const {
    TextTable table({"for", "amount", "unit", "at", "money", "which is"});
    for (const CostLine& line : variant.cost.lines)
      table.add({std::string(word_of(line.kind)),
                 line.unit.empty() ? Cell("") : Cell::of_figure(figure_text(line.amount, 6)),
                 line.unit, line.rate.empty() ? Cell("") : Cell::of_figure(line.rate),
                 Cell::of_figure(money_text(line.money)), line.what});
    table.add({"all", "", "", "", Cell::of_figure(money_text(variant.cost.total())), ""});
    PagePart part{"COST, " + rates_.currency};
    part.body = PageText::table(table, lengths_, 2) + words("wood by " + variant.wood_from);
    return part;
  }

  PagePart price(const QuoteVariant& variant) const {
    const AskedPrice& price = variant.price;
    PagePart part{"PRICE " + money(price.asked) + " before tax"};
    part.body += words(made_from(price));
    if (price.asked < price.cost) part.body += words("CAUTION: as rounded it is below the cost");
    part.body += words("margin " + percent_text(price.margin()) + " of the price, markup " +
                       percent_text(price.markup()) + " on the cost");
    part.body += words("below " + money(price.cost) + " the job loses money" +
                       (variant.cost.missing.empty() ? "" : "; what is not counted comes on top"));
    part.body += words("an hour earns " + money(price.earns_per_hour()) +
                       ", once all that is bought is paid");
    for (const TaxAmount& tax : price.tax)
      part.body += words(tax.what + ", " + percent_text(tax.share) + ": " + money(tax.money));
    if (!price.tax.empty()) part.body += words("to pay: " + money(price.to_pay()));
    return part;
  }

  /// How it was rounded, too.
  std::string made_from(const AskedPrice& price) const {
    const PriceRounding& rounding = rates_.rounding;
    std::string text;
    if (rates_.margin)
      text = "cost over 1 less a margin of " + percent_text(*rates_.margin);
    else if (!rates_.markup->by_heading)
      text = "cost and a markup of " + percent_text(rates_.markup->wood);
    else
      text = "cost and markups of " + percent_text(rates_.markup->wood) + " on wood, " +
             percent_text(rates_.markup->sheet) + " on sheet, " +
             percent_text(rates_.markup->bought_in) + " on what is bought in, " +
             percent_text(rates_.markup->labour) + " on labour and all else";
    text += ": " + money(price.reckoned);
    if (price.asked != price.reckoned)
      text += std::string(rounding.way == RoundingWay::up ? ", rounded up" : ", rounded") +
              " to whole " + figure_text(rounding.to, 2) + " " + rates_.currency;
    return text;
  }

  PagePart shares(const QuoteVariant& variant) const {
    TextTable table({"item", "made", "hours", "cost", "price"});
    for (const ItemShare& share : variant.shares)
      table.add({variant.items()[share.item].job->id,
                 Cell::of_figure(std::to_string(variant.count_of(share.item))),
                 Cell::of_figure(hours_text(share.hours)), Cell::of_figure(money_text(share.cost)),
                 Cell::of_figure(money_text(share.price))});
    PagePart part{"WHAT EACH ITEM BEARS"};
    part.body = PageText::table(table, lengths_, 2) +
                words(
                    "a set-up is borne by the pieces that are run on it, a board by what is cut "
                    "from it, work for the whole order by how many there are of each, overhead "
                    "as all else; the price as the cost. All add up to the hundredth: what "
                    "rounding leaves goes to those that lost most by it.");
    return part;
  }

  /// Which order is late, one after the other.
  PagePart due(const std::vector<OrderDue>& orders) const {
    TextTable table({"order", "hours", "until then", "ready", "wanted", "late"});
    for (const OrderDue& order : orders)
      table.add(
          {report_.variants.front().items()[order.item].job->id,
           Cell::of_figure(hours_text(order.hours)), Cell::of_figure(hours_text(order.until)),
           order.ready ? day_text(*order.ready) : "", order.wanted ? day_text(*order.wanted) : "",
           order.is_late()
               ? std::to_string(order.days_late()) + (order.days_late() == 1 ? " day" : " days")
               : ""});
    PagePart part{"WANTED BY, one after the other"};
    part.body = PageText::table(table, lengths_, 2);
    if (!rates_.hours_a_week)
      part.body += words("how much of it a week does is not told: \"hours_a_week\" of the rates");
    else if (!report_.paper.date)
      part.body += words("with --date, on which work begins, it is told what is late");
    else
      part.body += words("begun on " + day_text(*report_.paper.date) + ", " +
                         figure_text(*rates_.hours_a_week, 1) +
                         " h a week, spread over all its days; no day off is known of");
    if (!report_.variants.front().hours.waiting.empty())
      part.body += words("only hours of hands are in it: what wood rests and coats dry is not");
    return part;
  }

  PagePart side_by_side() const {
    TextTable table(
        {"variant", "made", "hours", "cost", "price", "h each", "cost each", "price each"});
    for (const QuoteVariant& variant : report_.variants)
      table.add({variant.asked.name + (variant.cost.missing.empty() ? "" : " *"),
                 Cell::of_figure(std::to_string(variant.asked.quantity)),
                 Cell::of_figure(hours_text(variant.hours.total.hours())),
                 Cell::of_figure(money_text(variant.price.cost)),
                 Cell::of_figure(money_text(variant.price.asked)),
                 Cell::of_figure(hours_text(variant.hours_each())),
                 Cell::of_figure(money_text(to_hundredths(variant.cost_each()))),
                 Cell::of_figure(money_text(to_hundredths(variant.price_each())))});
    PagePart part{"SIDE BY SIDE, " + rates_.currency, PageText::table(table, lengths_, 2)};
    if (std::any_of(report_.variants.begin(), report_.variants.end(),
                    [](const QuoteVariant& it) { return !it.cost.missing.empty(); }))
      part.body += words("* not all of it is counted: its cost and price are too low");
    const QuoteVariant& stated = report_.variants.front();
    for (std::size_t i = 1; i < report_.variants.size(); ++i)
      part.body += why(stated, report_.variants[i]);
    for (const QuoteVariant& variant : report_.variants)
      if (const Rises rises = rises_to(report_, variant); !rises.what.empty())
        part.body += words(variant.asked.name + ", each, after " + rises.from->asked.name + ": " +
                           joined_words(rises.what, "; "));
    return part;
  }

  /// What makes one of a variant cheaper or dearer than one as stated.
  PageText why(const QuoteVariant& stated, const QuoteVariant& variant) const {
    const std::vector<std::string> all = differences(stated, variant, rates_.currency);
    return words(variant.asked.name +
                 ", each: " + (all.empty() ? "no difference" : joined_words(all, "; ")));
  }

  const QuoteReport& report_;
  const Rates& rates_;
  const LengthPrinter& lengths_;
};

}  // namespace

PageParts quote_parts(const QuoteReport& report, const LengthPrinter& lengths) {
  return ShopPaper(report, lengths).parts();
}

}  // namespace haunch
