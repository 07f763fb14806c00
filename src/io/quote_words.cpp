#include "quote_words.h"

#include <fmt/core.h>

#include <algorithm>
#include <map>

#include "bought.h"
#include "fitted.h"
#include "quote_goods.h"

namespace haunch {
namespace {

/// Of all that a workshop is to be told, what concerns those who have the work in their house.
bool concerns_customer(const Caution& caution) {
  constexpr std::string_view kTheirs[] = {"old paint",        "safety glazing", "escape route",
                                          "accessible route", "tipping",        "shelf loads",
                                          "hanging",          "glass shelves"};
  return std::any_of(std::begin(kTheirs), std::end(kTheirs),
                     [&](std::string_view about) { return caution.about.starts_with(about); });
}

/// What most of the work is of first, by itself; of others what is of them.
std::vector<std::string> woods_of(const ItemReport& item) {
  std::vector<std::pair<std::string, std::vector<std::string>>> woods;
  for (const CutRow& row : item.cutlist) {
    const std::string material = row.material.empty() ? "wood not told" : row.material;
    auto same = std::find_if(woods.begin(), woods.end(),
                             [&](const auto& it) { return it.first == material; });
    if (same == woods.end()) same = woods.insert(woods.end(), {material, {}});
    const std::string what = several_of(row.part);
    if (std::find(same->second.begin(), same->second.end(), what) == same->second.end())
      same->second.push_back(what);
  }
  std::vector<std::string> told;
  for (const auto& [material, roles] : woods)
    told.push_back(woods.size() == 1 || joined_words(roles, ", ") == material
                       ? material
                       : material + " (" + joined_words(roles, ", ") + ")");
  return told;
}

/// "2 runners", "1 runner"
std::string so_many(std::int64_t number, std::string name) {
  constexpr std::string_view kSeveral[] = {"hinges", "runners", "screws"};
  if (number == 1)
    for (const std::string_view several : kSeveral)
      if (name.starts_with(several)) name.erase(several.size() - 1, 1);
  return std::to_string(number) + " " + name;
}

std::vector<std::string> fittings_of(const ItemReport& item) {
  std::vector<std::string> told;
  for (const FittedGoods& goods : fitted_to(item.wood)) {
    const BoughtFitting* listed = listed_for(goods, item.job->fittings);
    if (listed != nullptr)
      told.push_back(std::to_string(goods.number) + " " + listed->name);
    else if (goods.by_hand)
      told.push_back(so_many(goods.number, goods.name));
  }
  return told;
}

/// What comes of an opening that is not true, each once.
std::vector<Caution> found_cautions(const ItemReport& item) {
  std::vector<Caution> cautions;
  for (const Finding& finding : item.findings) {
    const std::string_view about = finding.rule->check;
    if (finding.status != Status::caution || !about.starts_with("found-")) continue;
    const bool told = std::any_of(cautions.begin(), cautions.end(),
                                  [&](const Caution& it) { return it.about == about; });
    if (!told) cautions.push_back({about, finding_message(finding, item.job->unit)});
  }
  return cautions;
}

std::string finish_words(const Job& job, const Rates& rates) {
  const Finish* finish = finish_of(job, rates);
  if (finish == nullptr) return "none";
  const int coats = job.finish.coats.value_or(finish->coats);
  std::string words =
      finish->name + ", " + std::to_string(coats) + (coats == 1 ? " coat" : " coats");
  if (job.finish.faces == FinishedFaces::front) words += ", backs left bare";
  if (job.finish.when)
    words += *job.finish.when == FinishedWhen::before ? ", before it is put together"
                                                      : ", after it is put together";
  return words;
}

}  // namespace

QuotedItem told_of(const ItemReport& item, std::int64_t count, const Rates& rates) {
  const Job& job = *item.job;
  QuotedItem told;
  told.id = job.id;
  told.name = job.name;
  told.count = count;
  told.size = item.wood.size;
  told.third_size = goes_back(item.wood) ? "deep" : "thick";
  told.woods = woods_of(item);
  told.fittings = fittings_of(item);
  told.finish = finish_words(job, rates);
  told.finish_is_first = job.finish.system.empty() && finish_of(job, rates) != nullptr;
  told.hung = !job.supply_only;
  told.due = job.due;
  std::copy_if(item.cautions.begin(), item.cautions.end(), std::back_inserter(told.cautions),
               concerns_customer);
  for (Caution& caution : found_cautions(item))
    told.cautions.push_back(std::move(caution));
  return told;
}

std::vector<QuotedItem> items_told(const QuoteVariant& variant, const Rates& rates) {
  std::vector<QuotedItem> all;
  for (std::size_t i = 0; i < variant.items().size(); ++i)
    all.push_back(told_of(variant.items()[i], variant.count_of(i), rates));
  return all;
}

std::vector<std::string> failed_checks(const QuoteVariant& variant) {
  std::vector<std::string> all;
  for (const ItemReport& item : variant.items()) {
    const std::int64_t failed = item.count_of(Status::fail);
    if (failed == 0) continue;
    std::vector<std::string> rules;
    for (const Finding& finding : item.findings) {
      const std::string rule(finding.rule->check);
      const bool told = std::find(rules.begin(), rules.end(), rule) != rules.end();
      if (finding.status == Status::fail && !told) rules.push_back(rule);
    }
    all.push_back(item.job->id + ": " + std::to_string(failed) + " of " +
                  std::to_string(item.findings.size()) +
                  (failed == 1 ? " checks fails: " : " checks fail: ") + joined_words(rules, ", "));
  }
  return all;
}

std::string size_words(const QuotedItem& item, const LengthPrinter& lengths) {
  return lengths.one(item.size[0]) + " x " + lengths.one(item.size[1]) + " x " +
         lengths.one(item.size[2]) + " " + std::string(word_of(lengths.unit())) +
         " (wide x high x " + item.third_size + ")";
}

std::string joined_words(const std::vector<std::string>& words, std::string_view between) {
  std::string all;
  for (const std::string& word : words)
    all += (all.empty() ? "" : std::string(between)) + word;
  return all;
}

std::string hours_text(double hours) {
  return fmt::format("{:.2f}", hours);
}

std::string percent_text(double share) {
  constexpr double kPercent = 100;
  return figure_text(share * kPercent, 2) + " %";
}

}  // namespace haunch
