#include "hours.h"

#include <algorithm>
#include <map>
#include <set>
#include <utility>

#include "operation_count.h"

namespace haunch {
namespace {

constexpr double kHoursADay = 24;

/// What is shared out by weights, so that the parts add up to it: each gets what brings the sum so
/// far to its share, rounded down. All equal where the weights are nothing.
std::vector<WorkTime> shared_out(WorkTime whole, std::vector<std::int64_t> weights) {
  lumber::Wide sum = 0;
  for (const std::int64_t weight : weights)
    sum += weight;
  if (sum == 0) {
    std::fill(weights.begin(), weights.end(), 1);
    sum = static_cast<lumber::Wide>(weights.size());
  }
  std::vector<WorkTime> shares;
  WorkTime given;
  lumber::Wide so_far = 0;
  for (const std::int64_t weight : weights) {
    so_far += weight;
    const WorkTime reached{static_cast<std::int64_t>(whole.millionths * so_far / sum)};
    shares.push_back(reached - given);
    given = reached;
  }
  return shares;
}

class Reckoning {
 public:
  Reckoning(const SetupPlan& plan, const std::vector<HourItem>& items, const Rates& rates,
            std::int64_t quantity)
      : plan_(plan), items_(items), rates_(rates), quantity_(quantity) {}

  HoursPlan all() {
    for (const OperationCount& count : operations_of(plan_, items_))
      operation(count);
    rest();
    finishes();
    for (const OtherWork& work : rates_.work)
      other_work(work, {});
    for (std::size_t item = 0; item < items_.size(); ++item)
      for (const OtherWork& work : items_[item].work)
        other_work(work, item);
    for (const HourLine& line : hours_.lines)
      hours_.total += line.total();
    return std::move(hours_);
  }

 private:
  std::int64_t count_of(std::size_t item) const { return items_[item].item->quantity * quantity_; }

  Quantity whole(const OperationCount& count, WorkUnit unit) const {
    Quantity sum;
    for (const ItemCount& each : count.items)
      sum += each.of(unit) * count_of(each.item);
    return sum;
  }

  // ---- what rates are told for by operation

  void operation(const OperationCount& count) {
    const OperationRate* rate = rate_of(rates_, count.operation);
    const std::vector<WorkUnit> units =
        rate == nullptr ? std::vector<WorkUnit>() : units_that_count(*rate, count);
    if (rate == nullptr || units.empty()) {
      lack(count, rate == nullptr ? "" : rate->name);
      return;
    }
    for (const WorkUnit unit : units) {
      HourLine line = line_of(count, *rate, unit);
      if (unit == units.front()) set_up(line, count, rate->setup);
      hours_.lines.push_back(std::move(line));
    }
  }

  /// Those that the rate has minutes for and there is something of. Of those that come to nothing
  /// one is left, where that is said.
  std::vector<WorkUnit> units_that_count(const OperationRate& rate,
                                         const OperationCount& count) const {
    std::vector<WorkUnit> units;
    std::optional<WorkUnit> nothing;
    for (std::size_t i = 0; i < kRunUnits; ++i) {
      const auto unit = static_cast<WorkUnit>(i);
      const auto& each = rate.each[i];
      if (!each) continue;
      if (*each == WorkTime())
        nothing = nothing.value_or(unit);
      else if (whole(count, unit) > Quantity())
        units.push_back(unit);
    }
    if (units.empty() && nothing) units.push_back(*nothing);
    return units;
  }

  /// `rate`: that is told, but counts nothing of it.
  void lack(const OperationCount& count, const std::string& rate) {
    LackingRate lacking{count.operation, rate, static_cast<std::int64_t>(count.setups.size())};
    for (std::size_t unit = 0; unit < kRunUnits; ++unit)
      lacking.quantities[unit] = whole(count, static_cast<WorkUnit>(unit));
    hours_.lacking.push_back(std::move(lacking));
  }

  HourLine line_of(const OperationCount& count, const OperationRate& rate, WorkUnit unit) const {
    HourLine line;
    line.operation = count.operation;
    line.group = count.group;
    line.trade = rate.trade;
    line.rate = rate.name;
    line.standing = rate.standing;
    line.machine_hour = rate.machine_hour;
    line.unit = unit;
    line.each = *rate.each[static_cast<std::size_t>(unit)];
    for (const ItemCount& each : count.items) {
      add_item(line, each.item, each.of(unit) * count_of(each.item));
      line.pieces += each.pieces * count_of(each.item);
    }
    return line;
  }

  static void add_item(HourLine& line, std::size_t item, Quantity quantity) {
    const WorkTime run = time_for(line.each, quantity);
    line.quantity += quantity;
    line.run += run;
    line.items.push_back({item, quantity, {}, run});
  }

  void set_up(HourLine& line, const OperationCount& count, WorkTime each) const {
    line.setups = static_cast<std::int64_t>(count.setups.size());
    line.setup_each = each;
    line.setup = each * line.setups;
    for (const auto& setup : count.setups) {
      std::vector<std::int64_t> weights;
      for (const ItemTime& item : line.items)
        weights.push_back(pieces_on(setup, item.item));
      const std::vector<WorkTime> shares = shared_out(each, std::move(weights));
      for (std::size_t i = 0; i < shares.size(); ++i)
        line.items[i].setup += shares[i];
    }
  }

  std::int64_t pieces_on(const SetupPieces& setup, std::size_t item) const {
    const auto its = setup.find(item);
    return its == setup.end() ? 0 : its->second * count_of(item);
  }

  // ---- what the clock runs for

  void rest() {
    int days = 0;
    for (const Setup& setup : plan_.setups)
      days = std::max(days, setup.rest_days);
    if (days > 0) hours_.waiting.push_back({"rest after first milling", days * kHoursADay});
  }

  // ---- finishes

  void finishes() {
    std::vector<std::pair<std::string, int>> all;  // a name, and how many coats of it
    for (const HourItem& item : items_) {
      const std::pair its{item.finish, item.coats};
      if (!item.finish.empty() && std::find(all.begin(), all.end(), its) == all.end())
        all.push_back(its);
    }
    for (const auto& [name, coats] : all)
      finish(name, coats);
  }

  void finish(const std::string& name, int said) {
    OperationCount count{"finish-" + name, WorkGroup::finish};
    for (std::size_t item = 0; item < items_.size(); ++item)
      if (items_[item].finish == name && items_[item].coats == said) {
        count.items.push_back({item, surface_count(items_, item).pieces});
        count.items.back().area = seen_surface(*items_[item].item->wood, items_[item].faces);
      }
    const Finish* finish = rates_.finish_called(name);
    if (finish == nullptr) {
      lack(count, {});
      return;
    }
    const int coats = said > 0 ? said : finish->coats;
    OperationRate rate{name, finish->setup, {}, finish->trade, 0, finish->standing};
    rate.each[static_cast<std::size_t>(WorkUnit::square_metre)] = finish->square_metre;
    SetupPieces all;
    for (ItemCount& each : count.items) {
      each.times = coats;
      all[each.item] = each.pieces;
    }
    count.setups.assign(static_cast<std::size_t>(coats), all);
    HourLine line = line_of(count, rate, WorkUnit::square_metre);
    line.list = RateList::finish;
    set_up(line, count, finish->setup);
    hours_.lines.push_back(std::move(line));
    if (coats > 1 && finish->hours_between > 0)
      hours_.waiting.push_back({name + ": between " + std::to_string(coats) + " coats",
                                finish->hours_between * (coats - 1)});
  }

  // ---- work that is no cut

  /// Of one item, or of all of them.
  void other_work(const OtherWork& work, std::optional<std::size_t> only) {
    HourLine line;
    line.operation = line.rate = work.what;
    line.list = RateList::work;
    line.group = work.group;
    line.trade = work.trade;
    line.standing = work.standing;
    line.unit = work.per;
    line.each = work.minutes;
    line.cost_each = work.cost;
    std::vector<std::size_t> items;
    for (std::size_t item = 0; item < items_.size(); ++item)
      if (!only || *only == item) items.push_back(item);
    const bool once = work.per == WorkUnit::order || work.per == WorkUnit::trip;
    for (const std::size_t item : items) {
      line.pieces += count_of(item);
      if (!once) add_item(line, item, items_of(work, item));
    }
    if (once) share_once(line, items, Quantity::of(work.times));
    hours_.lines.push_back(std::move(line));
  }

  Quantity items_of(const OtherWork& work, std::size_t item) const {
    const std::int64_t each = work.per == WorkUnit::piece ? wood_pieces(items_, item) : 1;
    return Quantity::of(each * work.times) * count_of(item);
  }

  /// What is done once an order is borne by its items in proportion to how many there are of each.
  void share_once(HourLine& line, const std::vector<std::size_t>& items, Quantity quantity) const {
    line.quantity = quantity;
    line.run = time_for(line.each, quantity);
    std::vector<std::int64_t> weights;
    for (const std::size_t item : items)
      weights.push_back(count_of(item));
    const std::vector<WorkTime> shares = shared_out(line.run, std::move(weights));
    for (std::size_t i = 0; i < items.size(); ++i)
      line.items.push_back({items[i], {}, {}, shares[i]});
  }

  const SetupPlan& plan_;
  const std::vector<HourItem>& items_;
  const Rates& rates_;
  std::int64_t quantity_;
  HoursPlan hours_;
};

/// "3 set-ups, 7 pieces, 1.92 metres".
std::string amount_words(const LackingRate& lacking) {
  constexpr std::string_view kUnits[] = {"piece", "metre", "joint", "square metre"};
  static_assert(std::size(kUnits) == kRunUnits);
  std::string words;
  const auto add = [&](const std::string& number, std::string_view what) {
    words +=
        (words.empty() ? "" : ", ") + number + " " + std::string(what) + (number == "1" ? "" : "s");
  };
  if (lacking.setups > 0) add(std::to_string(lacking.setups), "set-up");
  for (std::size_t unit = 0; unit < kRunUnits; ++unit)
    if (lacking.quantities[unit] > Quantity())
      add(quantity_text(lacking.quantities[unit]), kUnits[unit]);
  return words;
}

/// The keys that would count it: "\"piece_min\" or \"metre_min\"".
std::string keys_words(const LackingRate& lacking) {
  std::vector<std::string> keys;
  for (std::size_t unit = 0; unit < kRunUnits; ++unit)
    if (lacking.quantities[unit] > Quantity())
      keys.push_back("\"" + std::string(word_of(static_cast<WorkUnit>(unit))) + "_min\"");
  std::string words;
  for (std::size_t i = 0; i < keys.size(); ++i)
    words += (i == 0 ? "" : i + 1 == keys.size() ? " or " : ", ") + keys[i];
  return words;
}

Problem problem_of(const LackingRate& lacking) {
  const std::string name = "\"" + lacking.operation + "\"";
  const std::string amount = amount_words(lacking);
  if (lacking.operation.starts_with("finish-"))
    return {"/finish",
            "\"" + lacking.operation.substr(7) + "\" is no finish of this file, and " + amount +
                " are to have it; add it",
            {}};
  if (lacking.rate.empty())
    return {"/operations",
            "no rate is given for " + name + ", of which there is: " + amount + "; add " + name +
                ": {\"setup_min\": …, " + keys_words(lacking) + ": …}",
            {}};
  return {child_path("/operations", lacking.rate),
          "counts nothing of " + name + ", of which there is: " + amount + "; add " +
              keys_words(lacking) + ", or a rate for " + name,
          {}};
}

}  // namespace

HoursPlan hours_of(const SetupPlan& plan, const std::vector<HourItem>& items, const Rates& rates,
                   std::int64_t quantity) {
  return Reckoning(plan, items, rates, quantity).all();
}

std::vector<Problem> problems_of(const HoursPlan& hours) {
  std::vector<Problem> problems;
  for (const LackingRate& lacking : hours.lacking)
    problems.push_back(problem_of(lacking));
  return problems;
}

}  // namespace haunch
