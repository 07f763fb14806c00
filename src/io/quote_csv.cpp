#include "csv_row.h"
#include "quote_goods.h"
#include "quote_report.h"

namespace haunch {
namespace {

constexpr int kHourPlaces = 6;

/// A row for every line of hours and of cost, and for what they come to.
class QuoteRows {
 public:
  QuoteRows(std::string& out, const QuoteReport& report, CsvProfile profile)
      : out_(out), report_(report), profile_(profile) {}

  void add_titles() {
    CsvRow row = fresh();
    row.plain("variant");
    row.plain("quantity");
    if (for_shop())
      for (const std::string_view title :
           {"section", "of", "what", "amount", "unit", "each", "hours"})
        row.plain(title);
    else
      row.plain("what");
    row.plain("money");
    row.plain("currency");
    row.end();
  }

  void add(const QuoteVariant& variant) {
    if (for_shop()) add_cost(variant);
    add_price(variant, "before tax", variant.price.asked);
    for (const TaxAmount& tax : variant.price.tax)
      add_price(variant, tax.what, tax.money);
    add_price(variant, "to pay", variant.price.to_pay());
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
  }

  bool for_shop() const { return !report_.paper.for_customer; }

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
    if (for_shop()) {
      row.plain(its.section);
      row.plain(its.of);
    }
    row.text(its.what);
    if (for_shop()) {
      row.number(its.amount);
      row.text(its.unit);
      row.number(its.each);
      row.number(its.hours, kHourPlaces);
    }
    row.number(its.money ? money_text(*its.money) : "");
    row.text(its.money ? report_.rates.currency : "");
    row.end();
  }

  std::string& out_;
  const QuoteReport& report_;
  CsvProfile profile_;
};

}  // namespace

std::string quote_csv(const QuoteReport& report, CsvProfile profile) {
  std::string out(csv_start(profile));
  QuoteRows rows(out, report, profile);
  rows.add_titles();
  for (const QuoteVariant& variant : report.variants)
    rows.add(variant);
  return out;
}

}  // namespace haunch
