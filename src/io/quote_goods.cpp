#include "quote_goods.h"

#include <fmt/core.h>

#include <algorithm>
#include <utility>

#include "bought.h"
#include "fitted.h"
#include "haunch/length_text.h"
#include "lumber_report.h"
#include "seen_surface.h"
#include "takings_off.h"

namespace haunch {
namespace {

double metres(Length length) {
  return static_cast<double>(length.steps()) / static_cast<double>(Length::from_mm(1'000).steps());
}

/// So much of something, so many times, of one item.
struct Bought {
  std::size_t item = 0;
  double measure = 0;       // of each, in the unit of its price
  std::int64_t number = 0;  // of them
};

/// Goods of one name, as items of an order take them.
class Buying {
 public:
  Buying(CostKind kind, std::string name, std::size_t items)
      : kind_(kind), name_(std::move(name)), borne_(items, 0.0) {}

  const std::string& name() const { return name_; }
  /// As the shop's list has it, whose name it goes by.
  const BoughtFitting* listed = nullptr;
  std::string unlisted_name;  // what it is called without the list

  void add(Bought bought) {
    borne_[bought.item] += bought.measure * static_cast<double>(bought.number);
    all_.push_back(bought);
  }

  CostLine priced_by(const Goods& goods) const {
    double amount = 0, money = 0;
    for (const Bought& each : all_) {
      const double number = static_cast<double>(each.number);
      amount += each.measure * number;
      money += std::max(each.measure * goods.price, goods.least) * number;
    }
    CostLine line = line_of(kind_, name_, amount, measure_words(goods.per), goods.price, borne_);
    line.money = to_hundredths(money);
    if (line.money > to_hundredths(amount * goods.price))
      line.what += ", at least " + money_text(to_hundredths(goods.least)) + " each";
    return line;
  }

  /// By the price of the shop's list, which is told, in whole packs.
  CostLine in_packs() const {
    std::int64_t number = 0;
    for (const Bought& each : all_)
      number += each.number;
    const BoughtLine bought{*listed, number};
    std::string what = name_ + ", price of the shop file";
    if (!listed->priced.empty()) what += " of " + listed->priced;
    if (listed->lead_days)
      what += ", " + std::to_string(*listed->lead_days) +
              (*listed->lead_days == 1 ? " day to come" : " days to come");
    const std::string unit =
        listed->pack == 1 ? "pieces" : "packs of " + std::to_string(listed->pack);
    return line_of(kind_, std::move(what), static_cast<double>(bought.packs()), unit,
                   *listed->price, borne_);
  }

 private:
  CostKind kind_;
  std::string name_;
  Bearing borne_;
  std::vector<Bought> all_;
};

/// All goods that one list of the rates file is asked for.
class Shopping {
 public:
  Shopping(CostKind kind, std::size_t items) : kind_(kind), items_(items) {}

  Buying& add(const std::string& name, Bought bought) {
    auto same =
        std::find_if(all_.begin(), all_.end(), [&](const Buying& it) { return it.name() == name; });
    if (same == all_.end()) same = all_.insert(all_.end(), Buying(kind_, name, items_));
    same->add(bought);
    return *same;
  }
  const std::vector<Buying>& all() const { return all_; }

 private:
  CostKind kind_;
  std::size_t items_;
  std::vector<Buying> all_;
};

/// A pane is bought by its area, or one by one.
double pane_measure(const LumberPart& pane, const Goods* goods) {
  if (goods != nullptr && goods->per == PricedBy::piece) return 1;
  return lumber::square_metres(lumber::area_of(pane.finished.length, pane.finished.width));
}

class GoodsReckoner {
 public:
  GoodsReckoner(const std::vector<ItemReport>& items, const std::vector<std::int64_t>& counts,
                const Rates& rates)
      : items_(items), counts_(counts), rates_(rates) {}

  GoodsCost all() {
    glass();
    fittings();
    edge_strips();
    finish();
    return std::move(cost_);
  }

 private:
  void glass() {
    Shopping panes(CostKind::glass, items_.size());
    for (std::size_t i = 0; i < items_.size(); ++i)
      for (const LumberPart& part : lumber_parts(items_[i], 1))
        if (!part.is_wood)
          panes.add(
              part.material,
              {i, pane_measure(part, priced(rates_, rates_.glass, part.material)), counts_[i]});
    take(panes, rates_.glass, "glass", "m2");
  }

  void fittings() {
    Shopping fitted(CostKind::fittings, items_.size());
    for (std::size_t i = 0; i < items_.size(); ++i)
      for (const FittedGoods& goods : fitted_to(items_[i].wood)) {
        const BoughtFitting* listed = listed_for(goods, items_[i].job->fittings);
        Buying& buying = fitted.add(listed != nullptr ? listed->name : goods.name,
                                    {i, 1, goods.number * counts_[i]});
        buying.listed = listed;
        buying.unlisted_name = goods.name;
      }
    take(fitted, rates_.fittings, "fittings", "pieces");
  }

  void edge_strips() {
    Shopping strips(CostKind::edge_strip, items_.size());
    for (std::size_t i = 0; i < items_.size(); ++i)
      for (const StripTotal& strip : strip_totals(items_[i].cutlist))
        strips.add("edge strip " + strip.material,
                   {i, metres(strip.length) / items_[i].job->quantity, counts_[i]});
    take(strips, rates_.bought_in, "bought_in", "m");
  }

  void finish() {
    for (const Finish& finish : rates_.finish) {
      Bearing area(items_.size(), 0.0);
      double sum = 0;
      for (std::size_t i = 0; i < items_.size(); ++i)
        if (finish_of(*items_[i].job, rates_) == &finish)
          sum += area[i] = coated(items_[i], finish) * static_cast<double>(counts_[i]);
      if (sum > 0)
        cost_.lines.push_back(line_of(CostKind::finish, finish.name, sum, "m2",
                                      finish.cost_square_metre, std::move(area)));
    }
  }

  /// In square metres; of other coats than the rates file's as much more or less, as its cost is of
  /// all of those.
  static double coated(const ItemReport& item, const Finish& finish) {
    const FinishSpec& said = item.job->finish;
    const double metres = lumber::square_metres(seen_surface(item.wood, said.faces));
    return said.coats ? metres * *said.coats / finish.coats : metres;
  }

  void take(const Shopping& shopping, const std::vector<Goods>& list, const std::string& key,
            const std::string& unit) {
    for (const Buying& buying : shopping.all()) {
      if (buying.listed != nullptr && buying.listed->price) {
        cost_.lines.push_back(buying.in_packs());
        continue;
      }
      const Goods* goods = priced(rates_, list, buying.name());
      if (goods == nullptr && buying.listed != nullptr)
        goods = priced(rates_, list, buying.unlisted_name);
      if (goods != nullptr) {
        cost_.lines.push_back(buying.priced_by(*goods));
        continue;
      }
      Goods unpriced;
      const double amount = buying.priced_by(unpriced).amount;
      cost_.missing.push_back({buying.name() + ", " + figure_text(amount, 3) + " " + unit,
                               "give its price in \"" + key + "\" of the rates file"});
    }
  }

  const std::vector<ItemReport>& items_;
  const std::vector<std::int64_t>& counts_;
  const Rates& rates_;
  GoodsCost cost_;
};

}  // namespace

GoodsCost goods_cost(const std::vector<ItemReport>& items, const std::vector<std::int64_t>& counts,
                     const Rates& rates) {
  return GoodsReckoner(items, counts, rates).all();
}

const Finish* finish_of(const Job& job, const Rates& rates) {
  const std::string& system = job.finish.system;
  if (system == kNoFinish) return nullptr;
  if (!system.empty()) return rates.finish_called(system);
  return rates.finish.empty() ? nullptr : &rates.finish.front();
}

const Goods* priced(const Rates& rates, const std::vector<Goods>& list, const std::string& name) {
  const Goods* goods = goods_called(list, name);
  return goods != nullptr ? goods : goods_called(rates.bought_in, name);
}

std::optional<double> measure_of(PricedBy per, lumber::Area area, Length thickness) {
  switch (per) {
    case PricedBy::cubic_metre:
      return lumber::cubic_metres(area, thickness);
    case PricedBy::board_foot:
      return lumber::board_feet(area, thickness);
    case PricedBy::square_metre:
      return lumber::square_metres(area);
    default:
      return {};
  }
}

std::string measure_words(PricedBy per) {
  constexpr std::string_view kUnits[] = {"pieces", "m", "m2", "m3", "board feet"};
  return std::string(kUnits[static_cast<std::size_t>(per)]);
}

std::string figure_text(double figure, int places) {
  std::string text = fmt::format("{:.{}f}", figure, places);
  if (text.find('.') == std::string::npos) return text;
  text.erase(text.find_last_not_of('0') + 1);
  if (text.ends_with('.')) text.pop_back();
  return text;
}

}  // namespace haunch
