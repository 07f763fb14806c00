#include "quote_customer.h"

#include <algorithm>
#include <utility>

#include "day.h"
#include "quote_goods.h"
#include "quote_words.h"

namespace haunch {
namespace {

class CustomerPaper {
 public:
  CustomerPaper(const QuoteReport& report, const LengthPrinter& lengths)
      : report_(report), lengths_(lengths), items_(items_told(stated(), report.rates)) {}

  PageParts parts() const {
    PageParts all{head()};
    for (const QuotedItem& item : items_)
      all.push_back(item_part(item));
    all.push_back(price());
    if (report_.variants.size() > 1) all.push_back(others());
    if (!report_.paper.stages.empty())
      all.push_back({"Paid in stages", stages_table(report_, lengths_)});
    append(all, {terms()});
    const PagePart told = cautions();
    if (!told.body.empty()) all.push_back(told);
    return all;
  }

 private:
  const QuoteVariant& stated() const { return report_.variants.front(); }
  std::string money(const Money& money) const {
    return money_text(money) + " " + report_.rates.currency;
  }
  PageText words(std::string text) const {
    return PageText::hanging(std::move(text), 2, lengths_.page_width());
  }

  PagePart head() const {
    const QuotePaper& paper = report_.paper;
    PagePart part{paper.is_invoice ? "Invoice " + paper.number : "Quote"};
    if (!has_other_work(*stated().asked.order, report_.rates))
      part.heading =
          "For making alone: no survey, delivery or fixing is in the price\n" + part.heading;
    for (const std::string& line : report_.rates.letterhead)
      part.body += words(line);
    if (paper.date) part.body += words(day_text(*paper.date));
    return part;
  }

  PagePart item_part(const QuotedItem& item) const {
    PagePart part{(item.count > 1 ? std::to_string(item.count) + " x " : std::string()) +
                  item.name + " (" + item.id + ")"};
    part.body += words("size: " + size_words(item, lengths_));
    part.body += words("wood: " + joined_words(item.woods, ", "));
    if (!item.fittings.empty())
      part.body += words("fittings" + std::string(item.count > 1 ? ", each: " : ": ") +
                         joined_words(item.fittings, ", "));
    part.body += words("finish: " + item.finish);
    if (!item.due.empty()) part.body += words("wanted by " + item.due);
    return part;
  }

  PagePart price() const {
    const AskedPrice& price = stated().price;
    PagePart part{"Price"};
    TextTable table({"", report_.rates.currency});
    if (stated().shares.size() > 1)
      for (const ItemShare& share : stated().shares)
        table.add({items_[share.item].name + " (" + items_[share.item].id + ")",
                   Cell::of_figure(money_text(share.price))});
    table.add(
        {price.tax.empty() ? "to pay" : "before tax", Cell::of_figure(money_text(price.asked))});
    for (const TaxAmount& tax : price.tax)
      table.add(
          {tax.what + ", " + percent_text(tax.share), Cell::of_figure(money_text(tax.money))});
    if (!price.tax.empty()) table.add({"to pay", Cell::of_figure(money_text(price.to_pay()))});
    part.body = PageText::table(table, lengths_, 2);
    return part;
  }

  PagePart others() const {
    TextTable table({"instead", "made", "before tax", "to pay"});
    for (std::size_t i = 1; i < report_.variants.size(); ++i) {
      const QuoteVariant& variant = report_.variants[i];
      table.add({variant.asked.name, Cell::of_figure(std::to_string(variant.asked.quantity)),
                 Cell::of_figure(money_text(variant.price.asked)),
                 Cell::of_figure(money_text(variant.price.to_pay()))});
    }
    return {"Priced apart, " + report_.rates.currency, PageText::table(table, lengths_, 2)};
  }

  PagePart terms() const {
    PagePart part{"Terms"};
    const std::string until = valid_until(report_);
    if (report_.paper.is_invoice)
      part.heading = "Not in the price";
    else if (!until.empty())
      part.body += words("holds until " + until);
    else if (report_.rates.valid_days)
      part.body += words("holds for " + std::to_string(*report_.rates.valid_days) + " days");
    const std::vector<std::string> left_out = not_included(report_);
    part.body += words("not included: " + (left_out.empty() ? "what is not named here"
                                                            : joined_words(left_out, ", ")));
    return part;
  }

  PagePart cautions() const {
    PagePart part{"To be known"};
    for (const QuotedItem& item : items_)
      for (const Caution& caution : item.cautions)
        part.body += words(item.name + ", " + std::string(caution.about) + ": " + caution.words);
    return part;
  }

  const QuoteReport& report_;
  const LengthPrinter& lengths_;
  std::vector<QuotedItem> items_;
};

bool any_on_site(const QuoteVariant& variant) {
  return std::any_of(variant.hours.lines.begin(), variant.hours.lines.end(),
                     [](const HourLine& line) { return line.unit == WorkUnit::trip; });
}

bool hung_on_site(const QuoteVariant& variant) {
  return std::any_of(variant.hours.lines.begin(), variant.hours.lines.end(),
                     [](const HourLine& line) { return line.operation == "hang-leaf-on-site"; });
}

}  // namespace

std::vector<std::string> not_included(const QuoteReport& report) {
  const QuoteVariant& stated = report.variants.front();
  std::vector<std::string> all;
  if (!any_on_site(stated)) all.emplace_back("delivery");
  for (const ItemReport& item : stated.items())
    if (item.job->supply_only) all.push_back("hanging and fitting of the " + item.job->name);
  const bool hung = hung_on_site(stated);
  std::copy_if(report.rates.not_included.begin(), report.rates.not_included.end(),
               std::back_inserter(all), [&](const std::string& what) {
                 return !hung || (what != "fixing on site" && what != "hanging on site");
               });
  return all;
}

std::string valid_until(const QuoteReport& report) {
  if (!report.paper.date || !report.rates.valid_days) return {};
  return day_text(*report.paper.date + std::chrono::days(*report.rates.valid_days));
}

PageText stages_table(const QuoteReport& report, const LengthPrinter& lengths) {
  TextTable table({"payment", "share", report.rates.currency});
  const std::vector<StageAmount> all = stages_in(report);
  for (std::size_t i = 0; i < all.size(); ++i)
    table.add({std::to_string(i + 1), figure_text(all[i].percent, 2) + " %",
               Cell::of_figure(money_text(all[i].to_pay()))});
  return PageText::table(table, lengths, 2);
}

PageParts customer_parts(const QuoteReport& report, const LengthPrinter& lengths) {
  return CustomerPaper(report, lengths).parts();
}

}  // namespace haunch
