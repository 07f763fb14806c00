#include "bought.h"

#include <algorithm>
#include <chrono>

#include "day.h"

namespace haunch {

const BoughtFitting* listed_for(const FittedGoods& goods, const std::vector<TakenFitting>& taken) {
  if (!goods.use) return nullptr;
  const auto its = std::find_if(taken.begin(), taken.end(),
                                [&](const TakenFitting& it) { return it.use == *goods.use; });
  return its == taken.end() ? nullptr : &its->bought;
}

std::vector<BoughtLine> bought_for(const Assembly& wood, const std::vector<TakenFitting>& taken,
                                   std::int64_t items) {
  std::vector<BoughtLine> all;
  if (taken.empty()) return all;
  for (const FittedGoods& goods : fitted_to(wood))
    if (const BoughtFitting* its = listed_for(goods, taken))
      add_bought(all, {{*its, goods.number * items}});
  return all;
}

void add_bought(std::vector<BoughtLine>& all, const std::vector<BoughtLine>& more) {
  for (const BoughtLine& line : more) {
    const auto same = std::find_if(all.begin(), all.end(), [&](const BoughtLine& it) {
      return it.fitting.name == line.fitting.name;
    });
    if (same == all.end())
      all.push_back(line);
    else
      same->number += line.number;
  }
}

std::optional<std::string> order_by(const BoughtFitting& fitting, const std::string& due) {
  const auto day = day_of(due);
  if (!day || !fitting.lead_days) return {};
  return day_text(*day - std::chrono::days(*fitting.lead_days));
}

}  // namespace haunch
