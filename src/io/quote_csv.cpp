#include "csv_row.h"
#include "day.h"
#include "quote_customer.h"
#include "quote_goods.h"
#include "quote_report.h"
#include "quote_words.h"

namespace haunch {
namespace {

constexpr int kHourPlaces = 6;

/// The shop's: a row for every line of hours and of cost, and for what they come to.
class QuoteRows {
 public:
  QuoteRows(std::string& out, const QuoteReport& report, CsvProfile profile)
      : out_(out), report_(report), profile_(profile) {}

  void add_titles() {
    CsvRow row = fresh();
    row.plain("variant");
    row.plain("quantity");
    for (const std::string_view title :
         {"section", "of", "what", "amount", "unit", "each", "hours"})
      row.plain(title);
    row.plain("money");
    row.plain("currency");
    row.end();
  }

  void add(const QuoteVariant& variant) {
    add_cost(variant);
    add_price(variant, "before tax", variant.price.asked);
    for (const TaxAmount& tax : variant.price.tax)
      add_price(variant, tax.what, tax.money);
    add_price(variant, "to pay", variant.price.to_pay());
    if (&variant == &report_.variants.front()) add_stages(variant);
  }

 private:
  struct Row {
    std::string_view section, of;
    std::string what, amount, unit, each;
    std::optional<double> hours;
    std::optional<Money> money;
  };

  void add_cost(const QuoteVariant& variant) {
    for (const HourLine& line : variant.hours.lines)
      add_hours(variant, line);
    for (const CostLine& line : variant.cost.lines)
      add_row(variant, {"cost",
                        word_of(line.kind),
                        line.what,
                        line.unit.empty() ? "" : figure_text(line.amount, 6),
                        line.unit,
                        line.rate,
                        {},
                        line.money});
    const double hours = variant.hours.total.hours();
    add_row(variant, {"cost", "all", "", "", "", "", hours, variant.cost.total()});
    for (const MissingFigure& each : variant.cost.missing)
      add_row(variant, {"not counted", "", each.what, "", "", "", {}, {}});
  }

  void add_stages(const QuoteVariant& variant) {
    int number = 0;
    for (const StageAmount& stage : stages_in(report_))
      add_row(variant, {"stage",
                        "",
                        "payment " + std::to_string(++number),
                        figure_text(stage.percent, 4),
                        "percent",
                        "",
                        {},
                        stage.to_pay()});
  }

  void add_price(const QuoteVariant& variant, const std::string& what, Money money) {
    add_row(variant, {"price", "", what, "", "", "", {}, money});
  }

  CsvRow fresh() { return {out_, report_.unit, profile_}; }

  void add_hours(const QuoteVariant& variant, const HourLine& line) {
    if (line.setups > 0)
      add_row(variant, {"hours",
                        word_of(line.group),
                        line.operation,
                        std::to_string(line.setups),
                        "set-ups",
                        minutes_text(line.setup_each),
                        line.setup.hours(),
                        {}});
    add_row(variant, {"hours",
                      word_of(line.group),
                      line.operation,
                      quantity_text(line.quantity),
                      std::string(word_of(line.unit)),
                      minutes_text(line.each),
                      line.run.hours(),
                      {}});
  }

  void add_row(const QuoteVariant& variant, const Row& its) {
    CsvRow row = fresh();
    row.text(variant.asked.name);
    row.count(variant.asked.quantity);
    row.plain(its.section);
    row.plain(its.of);
    row.text(its.what);
    row.number(its.amount);
    row.text(its.unit);
    row.number(its.each);
    row.number(its.hours, kHourPlaces);
    row.number(its.money ? money_text(*its.money) : "");
    row.text(its.money ? report_.rates.currency : "");
    row.end();
  }

  std::string& out_;
  const QuoteReport& report_;
  CsvProfile profile_;
};

/// All that the customer's paper tells, one under the other: what kind of line, its text, money.
class CustomerRows {
 public:
  CustomerRows(std::string& out, const QuoteReport& report, CsvProfile profile)
      : out_(out), report_(report), profile_(profile) {}

  void add_all() {
    CsvRow titles(out_, report_.unit, profile_);
    for (const std::string_view title : {"line", "text", "money", "currency"})
      titles.plain(title);
    titles.end();
    add_head();
    const QuoteVariant& stated = report_.variants.front();
    const std::vector<QuotedItem> items = items_told(stated, report_.rates);
    for (std::size_t i = 0; i < items.size(); ++i)
      add_item(items[i], stated.shares[i].price);
    for (const QuoteVariant& variant : report_.variants)
      add_price(variant);
    for (const StageAmount& stage : stages_in(report_))
      add("payment", figure_text(stage.percent, 4) + " %", stage.to_pay());
    add_terms();
    for (const QuotedItem& item : items)
      for (const Caution& caution : item.cautions)
        add("caution", item.id + ", " + std::string(caution.about) + ": " + caution.words);
  }

 private:
  void add(std::string_view line, const std::string& text, std::optional<Money> money = {}) {
    CsvRow row(out_, report_.unit, profile_);
    row.plain(line);
    row.text(text);
    row.number(money ? money_text(*money) : "");
    row.text(money ? report_.rates.currency : "");
    row.end();
  }

  void add_head() {
    const QuotePaper& paper = report_.paper;
    if (paper.is_invoice) add("invoice", paper.number);
    if (paper.date) add("date", day_text(*paper.date));
    for (const std::string& each : report_.rates.letterhead)
      add("letterhead", each);
    if (!has_other_work(*report_.variants.front().asked.order, report_.rates))
      add("note", "for making alone: no survey, delivery or fixing is in the price");
  }

  void add_item(const QuotedItem& item, Money price) {
    add("item", std::to_string(item.count) + " x " + item.name + " (" + item.id + ")", price);
    std::string size;
    for (std::size_t axis = 0; axis < 3; ++axis)
      size += (axis == 0 ? "" : " x ") + decimal(item.size[axis], report_.unit);
    add("size", size + " " + std::string(word_of(report_.unit)) + " (wide x high x " +
                    item.third_size + ")");
    add("wood", joined_words(item.woods, ", "));
    if (!item.fittings.empty()) add("fittings, each", joined_words(item.fittings, ", "));
    add("finish", item.finish);
    if (!item.due.empty()) add("wanted by", item.due);
  }

  /// Of what is priced apart with its name.
  void add_price(const QuoteVariant& variant) {
    const bool stated = &variant == &report_.variants.front();
    const std::string name =
        stated ? ""
               : variant.asked.name + ", " + std::to_string(variant.asked.quantity) + " made: ";
    const std::string_view line = stated ? "price" : "instead";
    add(line, name + "before tax", variant.price.asked);
    for (const TaxAmount& tax : variant.price.tax)
      add(line, name + tax.what + ", " + percent_text(tax.share), tax.money);
    add(line, name + "to pay", variant.price.to_pay());
  }

  void add_terms() {
    const std::string until = valid_until(report_);
    if (!report_.paper.is_invoice && !until.empty())
      add("holds until", until);
    else if (!report_.paper.is_invoice && report_.rates.valid_days)
      add("holds for", std::to_string(*report_.rates.valid_days) + " days");
    for (const std::string& each : not_included(report_))
      add("not included", each);
  }

  std::string& out_;
  const QuoteReport& report_;
  CsvProfile profile_;
};

}  // namespace

std::string quote_csv(const QuoteReport& report, CsvProfile profile) {
  std::string out(csv_start(profile));
  if (report.paper.for_customer) {
    CustomerRows(out, report, profile).add_all();
    return out;
  }
  QuoteRows rows(out, report, profile);
  rows.add_titles();
  for (const QuoteVariant& variant : report.variants)
    rows.add(variant);
  return out;
}

}  // namespace haunch
