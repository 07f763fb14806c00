#include "rates_file.h"

#include <algorithm>
#include <charconv>
#include <utility>

#include "operation_names.h"
#include "value_reader.h"

namespace haunch {
namespace {

constexpr double kMostMinutes = 10'000;
constexpr double kDearest = 999'999;
constexpr double kMostShare = 10;
constexpr double kMostHours = 10'000;
constexpr int kMostTimes = 1000;
constexpr int kMostCoats = 50;
constexpr int kMostDays = 1000;
constexpr double kLongestTrial = 10'000;
constexpr int kMostJobs = 1'000'000;

constexpr std::string_view kMinutesWords = "minutes";
constexpr std::string_view kAmountWords = "an amount of money";
constexpr std::string_view kEachKeys[] = {"piece_min", "metre_min", "joint_min",
                                          "square_metre_min"};
static_assert(std::size(kEachKeys) == kRunUnits);

/// "piece" of "piece_min".
constexpr std::string_view kMinutes = "_min";
constexpr std::string_view without_unit(std::string_view key) {
  return key.substr(0, key.size() - kMinutes.size());
}

using Read = const std::optional<double>;

/// Reads a rates file; every fault is a problem with its place.
class RatesReader {
 public:
  explicit RatesReader(const Value& document) : document_(document), values_({}, "rates") {}

  RatesReading read() {
    if (document_.kind != Value::Kind::object) {
      values_.wrong_type(document_, "", R"(a rates file; write an object {…} with "operations")");
      return {{}, values_.take_problems()};
    }
    check_keys(document_, "", RatesObject::whole);
    read_names();
    read_pay();
    read_price();
    read_work();
    read_operations();
    read_finishes();
    read_all_goods();
    check_trades(document_.find("wage") != nullptr);
    std::vector<Problem> problems = values_.take_problems();
    if (!problems.empty()) return {{}, std::move(problems)};
    return {std::move(rates_), {}};
  }

  /// Of a document with "work" alone, by the trades of a rates file.
  WorkReading read_work_by(const Rates& rates) {
    rates_.trades = rates.trades;
    rates_.source = rates.source;
    read_work();
    check_trades(rates.wage.has_value());
    return {std::move(rates_.work), values_.take_problems()};
  }

 private:
  // ---- single values

  void check_keys(const Value& object, const std::string& path, RatesObject kind) {
    const auto& known = rates_keys(kind);
    const auto is_known = [&](const std::string& key) {
      return std::find(known.begin(), known.end(), key) != known.end();
    };
    for (const Entry& entry : object.entries) {
      const std::string at = child_path(path, entry.key);
      if (is_known(entry.key + std::string(kMinutes)))
        values_.problem(
            at, "lacks its unit; write \"" + entry.key + std::string(kMinutes) + "\", in minutes");
      else if (!is_known(entry.key))
        values_.unknown_key(entry, at, known);
    }
  }

  std::optional<double> number(const Value& object, const std::string& path, std::string_view key,
                               double least, double most, std::string_view words) {
    const Value* value = object.find(key);
    if (value == nullptr) return {};
    return values_.number(*value, child_path(path, key), least, most, words);
  }

  std::optional<double> amount(const Value& object, const std::string& path, std::string_view key) {
    return number(object, path, key, 0, kDearest, kAmountWords);
  }

  /// To the nearest thousandth, however fine they are written.
  std::optional<WorkTime> minutes(const Value& object, const std::string& path,
                                  std::string_view key) {
    const auto read = number(object, path, key, 0, kMostMinutes, kMinutesWords);
    if (!read) return {};
    return WorkTime::from_minutes(*read);
  }

  std::string text(const Value& object, const std::string& path, std::string_view key) {
    const Value* value = object.find(key);
    if (value == nullptr) return {};
    return values_.text(*value, child_path(path, key)).value_or("");
  }

  std::vector<std::string> texts(std::string_view key) {
    std::vector<std::string> all;
    const Value* list = document_.find(key);
    if (list == nullptr) return all;
    const std::string path = child_path("", key);
    if (list->kind != Value::Kind::list)
      values_.wrong_type(*list, path, R"(a list of texts; write ["…"])");
    for (std::size_t i = 0; i < list->list.size(); ++i)
      if (auto text = values_.text(list->list[i], child_path(path, i)))
        all.push_back(*std::move(text));
    return all;
  }

  template <class Choice>
  std::optional<Choice> word(const Value& object, const std::string& path, std::string_view key) {
    const Value* value = object.find(key);
    if (value == nullptr) return {};
    const auto number = values_.choice(*value, child_path(path, key), kWords<Choice>);
    return number ? std::optional(static_cast<Choice>(*number)) : std::nullopt;
  }

  /// Whether an object has a key, which is told where it has not.
  bool has(const Value& object, const std::string& path, std::string_view key,
           const std::string& what) {
    if (object.find(key) != nullptr) return true;
    if (!values_.was_meant(child_path(path, key)))
      values_.problem(path, "lacks \"" + std::string(key) + "\", " + what);
    return false;
  }

  const Value* object_of(std::string_view key, std::string_view wanted) {
    const Value* value = document_.find(key);
    if (value == nullptr) return nullptr;
    return values_.is_object(*value, child_path("", key), wanted) ? value : nullptr;
  }

  // ---- the whole

  void read_names() {
    if (has(document_, "", "currency", R"(such as "EUR")")) {
      rates_.currency = text(document_, "", "currency");
      if (rates_.currency.empty() && document_.find("currency")->kind == Value::Kind::text)
        values_.problem("/currency", "is empty; write such as \"EUR\"");
    }
    rates_.note = text(document_, "", "note");
    rates_.source = word<RateSource>(document_, "", "source").value_or(RateSource::own);
    rates_.trial_piece_mm =
        number(document_, "", "trial_piece_mm", 0, kLongestTrial, "a length in millimetres");
    rates_.letterhead = texts("letterhead");
    rates_.not_included = texts("not_included");
    rates_.valid_days = whole(document_, "", "valid_days", 1, kMostDays);
    rates_.hours_a_week = number(document_, "", "hours_a_week", 0, kMostHours, "hours");
    if (rates_.hours_a_week == 0.0)
      values_.problem("/hours_a_week", "0 leaves no hour to work in; write more, or leave it out");
  }

  void read_pay() {
    rates_.wage = amount(document_, "", "wage");
    if (const Value* trades =
            object_of("trades", R"(wages an hour by trade; write {"joiner": 21, "painter": 19})"))
      for (const Entry& entry : trades->entries)
        if (const auto wage = values_.number(entry.value, child_path("/trades", entry.key), 0,
                                             kDearest, "what an hour is paid"))
          rates_.trades.push_back({entry.key, *wage});
    if (document_.find("wage") == nullptr && document_.find("trades") == nullptr &&
        !values_.was_meant("/wage") && !values_.was_meant("/trades"))
      values_.problem("", R"(lacks "wage", what an hour is paid, or "trades")");
    if (has(document_, "", "burden",
            "what is paid on a wage beside it, as a share of it; 0 may be said"))
      rates_.burden =
          number(document_, "", "burden", 0, kMostShare, "a share of the wage").value_or(0);
    if (has(document_, "", "billable",
            "which share of the hours that are paid can be billed; 1 may be said"))
      rates_.billable =
          number(document_, "", "billable", 0, 1, "a share of the paid hours").value_or(1);
  }

  // ---- the price

  void read_price() {
    read_overhead();
    read_margin();
    read_tax();
    read_rounding();
    read_yield();
    rates_.contingency =
        number(document_, "", "contingency", 0, 1, "a share of the cost").value_or(0);
  }

  void read_overhead() {
    constexpr std::string_view kForm =
        R"({"per_hour": 14}, of an hour that can be billed, or {"share": 0.2}, of the cost)";
    const Value* value = document_.find("overhead");
    if (value == nullptr) return;
    if (value->kind == Value::Kind::number) {
      values_.problem("/overhead",
                      as_written(*value) + " lacks what it is of; write " + std::string(kForm));
      return;
    }
    if (!values_.is_object(*value, "/overhead", "an overhead; write " + std::string(kForm))) return;
    check_keys(*value, "/overhead", RatesObject::overhead);
    const Overhead overhead{
        amount(*value, "/overhead", "per_hour"),
        number(*value, "/overhead", "share", 0, kMostShare, "a share of the cost")};
    if ((value->find("per_hour") == nullptr) == (value->find("share") == nullptr))
      values_.problem("/overhead", "takes one of the two; write " + std::string(kForm));
    rates_.overhead = overhead;
  }

  void read_margin() {
    const Value* margin = document_.find("margin");
    const Value* markup = document_.find("markup");
    if (margin != nullptr && markup != nullptr)
      values_.problem("/markup",
                      "stands beside \"margin\"; a price comes of one of them: keep the margin, a "
                      "share of the price, or the markup, on the cost");
    if (margin == nullptr && markup == nullptr && !values_.was_meant("/margin") &&
        !values_.was_meant("/markup"))
      values_.problem("", R"(lacks "margin", a share of the price, or "markup", a share of the )"
                          "cost; 0 may be said");
    if (margin != nullptr) read_margin(*margin);
    if (markup != nullptr) read_markup(*markup);
  }

  void read_margin(const Value& value) {
    double share = 0;
    const char* end = value.text.data() + value.text.size();
    const bool is_huge = std::from_chars(value.text.data(), end, share).ec != std::errc();
    if (value.kind != Value::Kind::number || (!is_huge && share < 1)) {
      rates_.margin = values_.number(value, "/margin", 0, 1, "a share of the price");
      return;
    }
    values_.problem("/margin", as_written(value) +
                                   " is 1 or more; a margin is a share of the price and less than "
                                   "all of it: of 25 % write 0.25");
  }

  void read_markup(const Value& value) {
    Markup markup;
    if (value.kind == Value::Kind::object) {
      check_keys(value, "/markup", RatesObject::markup);
      markup.by_heading = true;
      const std::pair<std::string_view, double*> headings[] = {{"wood", &markup.wood},
                                                               {"sheet", &markup.sheet},
                                                               {"bought_in", &markup.bought_in},
                                                               {"labour", &markup.labour}};
      for (const auto& [key, share] : headings)
        if (has(value, "/markup", key, "a share of its cost; 0 may be said"))
          *share = number(value, "/markup", key, 0, kMostShare, "a share of the cost").value_or(0);
    } else if (Read share =
                   values_.number(value, "/markup", 0, kMostShare, "a share of the cost")) {
      markup.wood = markup.sheet = markup.bought_in = markup.labour = *share;
    }
    rates_.markup = markup;
  }

  void read_tax() {
    const Value* tax = document_.find("tax");
    if (tax == nullptr) return;
    if (tax->kind == Value::Kind::number) {
      if (Read share = values_.number(*tax, "/tax", 0, 1, "a share of the price"))
        rates_.tax.push_back({"tax", *share});
      return;
    }
    if (tax->kind != Value::Kind::list) {
      values_.wrong_type(*tax, "/tax", R"(a list; write [{"what": "VAT", "share": 0.2}])");
      return;
    }
    for (std::size_t i = 0; i < tax->list.size(); ++i)
      read_tax_line(tax->list[i], child_path("/tax", i));
  }

  void read_tax_line(const Value& value, const std::string& path) {
    if (!values_.is_object(value, path, R"(a tax; write {"what": "VAT", "share": 0.2})")) return;
    check_keys(value, path, RatesObject::tax);
    if (!has(value, path, "what", "what it is called") ||
        !has(value, path, "share", "of the price: 0.2"))
      return;
    Read share = number(value, path, "share", 0, 1, "a share of the price");
    rates_.tax.push_back({text(value, path, "what"), share.value_or(0)});
  }

  void read_rounding() {
    constexpr double kLeast = 0.01;
    const Value* value = document_.find("rounding");
    if (value == nullptr) return;
    if (value->kind != Value::Kind::object) {
      if (Read to = values_.number(*value, "/rounding", kLeast, kMostHours, kAmountWords))
        rates_.rounding.to = *to;
      return;
    }
    check_keys(*value, "/rounding", RatesObject::rounding);
    if (has(*value, "/rounding", "to", "to whole multiples of which amount"))
      rates_.rounding.to =
          number(*value, "/rounding", "to", kLeast, kMostHours, kAmountWords).value_or(kLeast);
    rates_.rounding.way =
        word<RoundingWay>(*value, "/rounding", "way").value_or(RoundingWay::nearest);
  }

  void read_yield() {
    constexpr std::string_view kForm =
        R"({"share": 0.7, "of": "bought"}, to buy net / 0.7, or "of": "net", to buy net x 1.3)";
    const Value* value = document_.find("yield");
    if (value == nullptr) return;
    if (value->kind == Value::Kind::number) {
      values_.problem("/yield",
                      as_written(*value) + " does not say of what; write " + std::string(kForm));
      return;
    }
    if (!values_.is_object(*value, "/yield", "a yield; write " + std::string(kForm))) return;
    check_keys(*value, "/yield", RatesObject::yield);
    if (!has(*value, "/yield", "share", "which gets into the work: 0.7") ||
        !has(*value, "/yield", "of", R"("bought" or "net")"))
      return;
    const auto share = number(*value, "/yield", "share", 0, 1, "the share that gets into the work");
    const auto of = values_.choice(*value->find("of"), "/yield/of", {"bought", "net"});
    if (share == 0.0)
      values_.problem("/yield/share", "0 leaves nothing of what is bought; write more");
    if (share && of) rates_.yield = Yield{*share, *of == 0};
  }

  // ---- minutes

  /// Where a rate comes from, and what jobs say of it.
  RateStanding standing(const Value& value, const std::string& path) {
    RateStanding its;
    its.source = word<RateSource>(value, path, "source").value_or(rates_.source);
    its.backing.jobs = whole(value, path, "jobs", 0, kMostJobs).value_or(0);
    its.backing.worth = number(value, path, "worth", 0, kMostJobs, "jobs").value_or(0);
    its.backing.timed = whole(value, path, "timed", 0, kMostJobs).value_or(0);
    its.backing.middle = number(value, path, "middle", 0, kMostTimes, "a ratio").value_or(1);
    its.backing.spread = number(value, path, "spread", 0, kMostTimes, "a spread").value_or(0);
    if (its.backing.middle == 0)
      values_.problem(child_path(path, "middle"), "0 is no ratio of minutes; leave it out");
    if (its.backing.timed > its.backing.jobs)
      values_.problem(child_path(path, "timed"), "is more than \"jobs\", of which it counts some");
    return its;
  }

  std::optional<int> whole(const Value& value, const std::string& path, std::string_view key,
                           int least, int most) {
    const Value* its = value.find(key);
    if (its == nullptr) return {};
    return values_.whole_number(*its, child_path(path, key), least, most);
  }

  void read_operations() {
    const Value* operations =
        object_of("operations", R"(rates by operation; write {"mortise": {"setup_min": 12, )"
                                R"("joint_min": 2.5}})");
    if (operations == nullptr) return;
    for (const Entry& entry : operations->entries)
      read_operation(entry, child_path("/operations", entry.key));
  }

  void read_operation(const Entry& entry, const std::string& path) {
    if (!names_operation(entry.key)) unknown_operation(entry, path);
    if (entry.value.kind == Value::Kind::number) {
      values_.problem(path, as_written(entry.value) + " lacks its unit; write {\"piece_min\": " +
                                entry.value.text + "}, or in place of it " +
                                quoted_list({kEachKeys + 1, kRunUnits - 1}));
      return;
    }
    if (!values_.is_object(entry.value, path,
                           R"(a rate; write {"setup_min": 12, "joint_min": 2.5})"))
      return;
    check_keys(entry.value, path, RatesObject::operation);
    OperationRate rate;
    rate.name = entry.key;
    rate.setup = minutes(entry.value, path, "setup_min").value_or(WorkTime());
    bool told = false;
    for (std::size_t unit = 0; unit < kRunUnits; ++unit) {
      rate.each[unit] = minutes(entry.value, path, kEachKeys[unit]);
      told = told || entry.value.find(kEachKeys[unit]) != nullptr ||
             entry.value.find(without_unit(kEachKeys[unit])) != nullptr ||
             values_.was_meant(child_path(path, kEachKeys[unit]));
    }
    // Where its set-up alone is told, the work itself takes nothing.
    if (!told && entry.value.find("setup_min") != nullptr)
      rate.each[static_cast<std::size_t>(WorkUnit::piece)] = WorkTime();
    else if (!told)
      values_.problem(path, "does not say how long the work itself takes; add " +
                                quoted_list(kEachKeys) + "; 0 may be said");
    rate.trade = text(entry.value, path, "trade");
    rate.machine_hour = amount(entry.value, path, "machine_hour").value_or(0);
    rate.standing = standing(entry.value, path);
    rates_.operations.push_back(std::move(rate));
  }

  void unknown_operation(const Entry& entry, const std::string& path) {
    std::vector<std::string_view> known(operation_names().begin(), operation_names().end());
    const std::string_view nearest = nearest_word(entry.key, known);
    values_.problem(path,
                    nearest.empty()
                        ? "is no operation, nor the first words of one; 'haunch setups' tells "
                          "what they are called"
                        : "is no operation; did you mean \"" + std::string(nearest) + "\"?",
                    entry.offset);
  }

  void read_work() {
    const Value* work = document_.find("work");
    if (work == nullptr) return;
    if (work->kind != Value::Kind::list) {
      values_.wrong_type(*work, "/work", "a list; write " + std::string(kWorkForm));
      return;
    }
    for (std::size_t i = 0; i < work->list.size(); ++i)
      read_work(work->list[i], child_path("/work", i));
  }

  void read_work(const Value& value, const std::string& path) {
    if (!values_.is_object(value, path, "work; write " + std::string(kWorkForm))) return;
    check_keys(value, path, RatesObject::work);
    OtherWork work;
    if (has(value, path, "what", "what is done")) work.what = text(value, path, "what");
    if (value.find("cost") == nullptr && value.find("minutes") == nullptr &&
        !values_.was_meant(child_path(path, "cost")) &&
        !values_.was_meant(child_path(path, "minutes")))
      values_.problem(path, R"(lacks "minutes", or "cost"; 0 may be said)");
    work.minutes = minutes(value, path, "minutes").value_or(WorkTime());
    work.cost = amount(value, path, "cost").value_or(0);
    work.trade = text(value, path, "trade");
    if (has(value, path, "per", R"(for what it is done: "order", "item", "piece" or "trip")"))
      work.per = per_of(*value.find("per"), child_path(path, "per"));
    work.times = whole(value, path, "times", 1, kMostTimes).value_or(1);
    work.group = word<WorkGroup>(value, path, "group")
                     .value_or(work.per == WorkUnit::trip ? WorkGroup::site : WorkGroup::bench);
    work.standing = standing(value, path);
    if (std::any_of(rates_.work.begin(), rates_.work.end(),
                    [&](const OtherWork& other) { return other.what == work.what; }))
      values_.problem(child_path(path, "what"),
                      "\"" + work.what + "\" stands here twice; give each its own name");
    rates_.work.push_back(std::move(work));
  }

  WorkUnit per_of(const Value& value, const std::string& path) {
    constexpr WorkUnit kPer[] = {WorkUnit::order, WorkUnit::item, WorkUnit::piece, WorkUnit::trip};
    const auto choice = values_.choice(value, path, {"order", "item", "piece", "trip"});
    return kPer[choice.value_or(0)];
  }

  void read_finishes() {
    const Value* finishes = object_of(
        "finish", R"(finishes by name; write {"oil": {"coats": 3, "square_metre_min": 6}})");
    if (finishes == nullptr) return;
    for (const Entry& entry : finishes->entries)
      read_finish(entry, child_path("/finish", entry.key));
  }

  void read_finish(const Entry& entry, const std::string& path) {
    const Value& value = entry.value;
    if (!values_.is_object(value, path, R"(a finish; write {"coats": 3, "square_metre_min": 6})"))
      return;
    check_keys(value, path, RatesObject::finish);
    Finish finish;
    finish.name = entry.key;
    finish.coats = whole(value, path, "coats", 1, kMostCoats).value_or(1);
    if (has(value, path, "square_metre_min", "the minutes for a square metre and coat"))
      finish.square_metre = minutes(value, path, "square_metre_min").value_or(WorkTime());
    finish.setup = minutes(value, path, "setup_min").value_or(WorkTime());
    finish.hours_between = number(value, path, "hours_between", 0, kMostTimes, "hours").value_or(0);
    finish.cost_square_metre = amount(value, path, "cost_square_metre").value_or(0);
    finish.trade = text(value, path, "trade");
    finish.standing = standing(value, path);
    rates_.finish.push_back(std::move(finish));
  }

  // ---- what is bought

  void read_all_goods() {
    using enum PricedBy;
    read_goods("fittings", rates_.fittings, {piece, metre, square_metre});
    read_goods("glass", rates_.glass, {square_metre, piece, metre});
    read_goods("sheet", rates_.sheet, {square_metre, piece});
    read_goods("bought_in", rates_.bought_in, {piece, metre, square_metre});
    read_goods("wood", rates_.wood, {cubic_metre, board_foot, square_metre, metre});
  }

  void read_goods(std::string_view key, std::vector<Goods>& goods,
                  std::initializer_list<PricedBy> per) {
    std::vector<std::string_view> words;
    for (const PricedBy each : per)
      words.push_back(word_of(each));
    const std::string form = R"({"price": 9.5, "per": ")" + std::string(words.front()) + "\"}";
    const Value* all = object_of(key, "prices by name; write {\"…\": " + form + "}");
    if (all == nullptr) return;
    for (const Entry& entry : all->entries) {
      const std::string path = child_path(child_path("", key), entry.key);
      if (entry.value.kind == Value::Kind::number) {
        values_.problem(path, as_written(entry.value) +
                                  " lacks its unit; write {\"price\": " + entry.value.text +
                                  ", \"per\": \"" + std::string(words.front()) + "\"}");
        continue;
      }
      if (!values_.is_object(entry.value, path, "a price; write " + form)) continue;
      check_keys(entry.value, path, RatesObject::goods);
      goods.push_back(goods_of(entry, path, per, words));
    }
  }

  Goods goods_of(const Entry& entry, const std::string& path, std::initializer_list<PricedBy> per,
                 const std::vector<std::string_view>& words) {
    Goods goods;
    goods.name = entry.key;
    if (has(entry.value, path, "price", "what one costs; 0 may be said"))
      goods.price = amount(entry.value, path, "price").value_or(0);
    const bool by_piece = *per.begin() == PricedBy::piece;  // if nothing else is said
    if (by_piece ? entry.value.find("per") != nullptr
                 : has(entry.value, path, "per", "the unit of the price: " + quoted_list(words)))
      if (const auto choice =
              values_.choice(*entry.value.find("per"), child_path(path, "per"), words))
        goods.per = *(per.begin() + *choice);
    goods.least = amount(entry.value, path, "least").value_or(0);
    goods.source = word<RateSource>(entry.value, path, "source").value_or(rates_.source);
    return goods;
  }

  // ---- what hangs together

  void check_trades(bool has_wage) {
    for (OperationRate& rate : rates_.operations)
      check_trade(rate.trade, child_path("/operations", rate.name), has_wage);
    for (Finish& finish : rates_.finish)
      check_trade(finish.trade, child_path("/finish", finish.name), has_wage);
    for (std::size_t i = 0; i < rates_.work.size(); ++i)
      check_trade(rates_.work[i].trade, child_path("/work", i), has_wage);
  }

  /// What names none is of the only trade that there is, where no wage is told.
  void check_trade(std::string& trade, const std::string& path, bool has_wage) {
    if (trade.empty() && !has_wage && rates_.trades.size() == 1) trade = rates_.trades.front().name;
    if (trade.empty()) {
      if (!has_wage && !rates_.trades.empty())
        values_.problem(path, R"(names no trade, and no "wage" is given for it; add "trade": )" +
                                  trade_words());
      return;
    }
    const bool known = std::any_of(rates_.trades.begin(), rates_.trades.end(),
                                   [&](const Trade& it) { return it.name == trade; });
    if (!known)
      values_.problem(child_path(path, "trade"),
                      "\"" + trade + "\" is no trade of this file; " +
                          (rates_.trades.empty() ? "it has none" : "it has " + trade_words()));
  }

  std::string trade_words() const {
    std::vector<std::string_view> words;
    for (const Trade& trade : rates_.trades)
      words.push_back(trade.name);
    return quoted_list(words);
  }

  static constexpr std::string_view kWorkForm =
      R"([{"what": "survey", "minutes": 60, "per": "order"}])";

  const Value& document_;
  ValueReader values_;
  Rates rates_;
};

}  // namespace

RatesReading read_rates(const Value& document) {
  return RatesReader(document).read();
}

WorkReading read_other_work(const Value& list, const Rates& rates) {
  Value document;
  document.kind = Value::Kind::object;
  document.entries.push_back({"work", list.offset, list});
  return RatesReader(document).read_work_by(rates);
}

}  // namespace haunch
