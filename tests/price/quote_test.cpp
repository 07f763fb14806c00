// From an order to its price: one worked by hand to the cent, and what must hold of every other.
#include <cmath>
#include <memory>

#include "priced.h"
#include "quote_due.h"
#include "quote_report.h"

namespace haunch {
namespace {

using namespace test;

std::shared_ptr<const QuoteOrder> quote_order(const std::vector<std::string>& specs) {
  std::vector<ItemReport> items;
  for (const std::string& spec : specs)
    items.push_back(std::move(
        *report_item(std::move(read_job(value_of(spec), nullptr, "job").job), kWantedForQuote)
             .report));
  const Unit unit = items.front().job->unit;
  QuoteOrder order;
  order.work.resize(items.size());
  order.setups = report_setups(std::move(items), {}, "", unit);
  return std::make_shared<const QuoteOrder>(std::move(order));
}

std::string example(const std::string& name) {
  std::stringstream text;
  text << std::ifstream(std::string(HAUNCH_EXAMPLES) + "/" + name + ".json").rdbuf();
  return text.str();
}

/// The cabinet door whose hours are worked by hand in hours_test.cpp.
std::string cabinet_door(const std::string& more = "") {
  return R"({"kind": "door", "units": "mm", "use": "cabinet", "clearance": 3, "thickness": 22,
             "species": "European beech", "opening": {"width": 406, "height": 706},
             "stile_width": 60, "rail_widths": [60, 60], "panels": 1, "tenon_depth": 40,
             "groove_depth": 10)" +
         more + "}";
}

/// An hour that can be billed is 30 x 1.2 / 0.75 = 48.00.
std::string hand_rates(const std::string& price) {
  return R"({"currency": "EUR", "wage": 30, "burden": 0.2, "billable": 0.75, "contingency": 0.05,
    "overhead": {"per_hour": 9.5}, "yield": {"share": 0.7, "of": "bought"},
    "tax": [{"what": "VAT", "share": 0.2}], "rounding": {"to": 5, "way": "up"},
    "wood": {"European beech": {"price": 1150, "per": "cubic_metre"}}, )" +
         price + R"(, "operations": {
    "crosscut": {"setup_min": 1, "piece_min": 2}, "rip": {"setup_min": 2, "metre_min": 1},
    "first": {"setup_min": 3, "metre_min": 2}, "face-and-edge": {"setup_min": 3, "metre_min": 1},
    "thickness": {"setup_min": 2, "metre_min": 1}, "glue-up": {"joint_min": 4},
    "glue-up-boards": {"setup_min": 5, "joint_min": 6}, "mortise": {"setup_min": 12, "joint_min": 4.5},
    "tenon": {"setup_min": 15, "joint_min": 3}, "groove": {"setup_min": 10, "metre_min": 1.2},
    "sand": {"square_metre_min": 10}},
    "finish": {"oil": {"coats": 3, "setup_min": 5, "square_metre_min": 4, "cost_square_metre": 3}},
    "work": [{"what": "survey", "minutes": 45, "cost": 12.5, "per": "order"},
             {"what": "packing", "minutes": 5, "per": "item"}]})";
}

const std::optional<StockFile> kNoStock;

QuoteVariant quoted(const std::shared_ptr<const QuoteOrder>& order, const Rates& rates,
                    std::int64_t quantity = 1, const std::optional<StockFile>& stock = kNoStock) {
  return quote_of(so_many(as_stated(order), quantity), {rates, stock, Unit::mm, {}});
}

std::int64_t cents(const QuoteVariant& variant, CostGroup group) {
  return variant.cost.of(group).hundredths;
}

/// Boards of one size, as many as are wanted.
StockFile yard(const std::string& price) {
  StockReading reading = read_stock(value_of(
      R"({"units": "mm", "currency": "EUR", "stock": [
        {"id": "y54", "length": 4200, "width": 240, "thickness": 54, "species": "European oak",
         "price": )" +
      price + R"(, "per": "board"},
        {"id": "y27", "length": 3600, "width": 220, "thickness": 27, "species": "European oak",
         "price": )" +
      price + R"(, "per": "board"}]})"));
  REQUIRE(reading.file);
  return *reading.file;
}

}  // namespace

TEST_CASE("The cost and price of a cabinet door, by hand to the cent") {
  const Rates rates = rates_of(hand_rates(R"("margin": 0.2)"));
  const QuoteVariant one = quoted(quote_order({cabinet_door()}), rates);
  CHECK(one.cost.missing.empty());
  // 279.894 minutes (hours_test.cpp) are 4.6649 h; x 48.
  CHECK(cents(one, CostGroup::labour) == 22392);
  // Rough: 2 of 725 x 66, 2 of 385 x 66, 2 strips of 623 x 156, all of 27: 0.009204192 m3; / 0.7
  // is 0.01314885 m3, at 1150.
  CHECK(cents(one, CostGroup::material) == 1512);
  CHECK(cents(one, CostGroup::finish) == 190);      // 0.633168 m2 at 3
  CHECK(cents(one, CostGroup::bought_in) == 1250);  // what the survey costs beside the hands
  CHECK(cents(one, CostGroup::overhead) == 4432);   // 4.6649 h at 9.5
  // 223.92 + 15.12 + 1.90 + 12.50 + 44.32 = 297.76, of which a twentieth.
  CHECK(cents(one, CostGroup::contingency) == 1489);
  CHECK(one.cost.total() == Money{31265});
  CHECK(one.price.reckoned == Money{39081});  // / 0.8
  CHECK(one.price.asked == Money{39500});     // up to whole fives
  CHECK(std::abs(one.price.margin() - 82.35 / 395) < 1e-12);
  CHECK(std::abs(one.price.markup() - 82.35 / 312.65) < 1e-12);
  CHECK(one.price.earns_per_hour() == Money{7835});  // (395 - 29.52) / 4.6649
  CHECK(one.price.to_pay() == Money{47400});
}

TEST_CASE("Markup puts the same price on it as the margin that it comes to") {
  const auto order = quote_order({cabinet_door()});
  const QuoteVariant by_margin = quoted(order, rates_of(hand_rates(R"("margin": 0.2)")));
  const QuoteVariant by_markup = quoted(order, rates_of(hand_rates(R"("markup": 0.25)")));
  CHECK(by_markup.price.reckoned == by_margin.price.reckoned);
  CHECK(by_markup.price.asked == by_margin.price.asked);
}

TEST_CASE("The total is the sum of the groups, and that of the lines") {
  const Rates rates = example_rates();
  for (const char* name : {"side-door", "mill-yard", "flour-bin", "bread-counter", "sack-store"}) {
    INFO(name);
    const QuoteVariant one = quoted(quote_order({example(name)}), rates);
    Money lines, groups;
    for (const CostLine& line : one.cost.lines)
      lines += line.money;
    for (std::size_t i = 0; i < std::size(kWords<CostGroup>); ++i)
      groups += one.cost.of(static_cast<CostGroup>(i));
    CHECK(lines == one.cost.total());
    CHECK(groups == one.cost.total());
    CHECK(one.price.cost == one.cost.total());
  }
}

TEST_CASE("What items bear adds up to the hours, the cost and the price of the order") {
  const Rates rates = example_rates();
  const std::vector<std::string> specs{example("side-door"), example("mill-yard"),
                                       example("flour-bin"), example("bread-counter")};
  for (const auto& stock : {kNoStock, std::optional(yard("37.3"))}) {
    const QuoteVariant week = quoted(quote_order(specs), rates, 1, stock);
    Money cost, price;
    double hours = 0;
    for (const ItemShare& share : week.shares) {
      CHECK(share.cost > Money());
      cost += share.cost;
      price += share.price;
      hours += share.hours;
    }
    CHECK(cost == week.cost.total());
    CHECK(price == week.price.asked);
    CHECK(std::abs(hours - week.hours.total.hours()) < 1e-9);
  }
}

TEST_CASE("Two orders in one week cost no more than each by itself") {
  const Rates rates = example_rates();
  const std::string a = example("side-door"), b = example("mill-yard");
  const Money apart =
      quoted(quote_order({a}), rates).price.cost + quoted(quote_order({b}), rates).price.cost;
  CHECK(quoted(quote_order({a, b}), rates).price.cost < apart);
}

// What rounding each line to the hundredth adds may be half of it a line.
TEST_CASE("One of many costs no more than one of one, at one price and from a yard without end") {
  const Rates rates = example_rates();
  for (const auto& stock : {kNoStock, std::optional(yard("61.7"))}) {
    const auto order = quote_order({example("side-door")});
    const QuoteVariant one = quoted(order, rates, 1, stock);
    double hours = one.hours_each();
    for (const std::int64_t quantity : {2, 3, 4, 5, 7, 10, 20}) {
      INFO(quantity);
      const QuoteVariant many = quoted(order, rates, quantity, stock);
      const double roundings = 0.005 * static_cast<double>(one.cost.lines.size());
      CHECK(many.hours_each() <= hours);
      CHECK(many.cost_each() <= one.cost_each() + roundings);
      CHECK(many.cost.of(CostGroup::material).hundredths <=
            one.cost.of(CostGroup::material).hundredths * quantity + quantity);
      hours = many.hours_each();
    }
  }
}

TEST_CASE("What has no price is named and is no line of the cost") {
  const Rates rates = rates_of(hand_rates(R"("margin": 0.2)"));
  const QuoteVariant one =
      quoted(quote_order({cabinet_door(R"(, "hinges": {"number": 2})")}), rates);
  CHECK_FALSE(one.cost.has(CostGroup::fittings));
  for (const MissingFigure& each : one.cost.missing)
    CHECK(each.what.find("hinges") != std::string::npos);
  const QuoteVariant of_oak =
      quoted(quote_order({cabinet_door(R"(, "note": "x")")}), rates_of(rates_with(R"("yield":
        {"share": 0.7, "of": "bought"}, "operations": {"crosscut": {"piece_min": 1},
        "rip": {"piece_min": 1}, "first": {"piece_min": 1}, "face": {"piece_min": 1},
        "thickness": {"piece_min": 1}, "glue": {"joint_min": 1}, "mortise": {"piece_min": 1},
        "tenon": {"piece_min": 1}, "groove": {"piece_min": 1}, "sand": {"square_metre_min": 1}})")));
  REQUIRE(of_oak.cost.missing.size() == 1);
  CHECK(of_oak.cost.missing.front().what == "European beech 27 mm, 0.0092 m3 as sawn");
}

TEST_CASE("Each set-up of a joint or groove is tried on a piece, once, however many are made") {
  const Rates rates = rates_of(hand_rates(R"("margin": 0.2, "trial_piece_mm": 300)"));
  const auto order = quote_order({cabinet_door()});
  for (const std::int64_t quantity : {1, 10}) {
    const QuoteVariant variant = quoted(order, rates, quantity);
    const auto trial =
        std::find_if(variant.cost.lines.begin(), variant.cost.lines.end(),
                     [](const CostLine& line) { return line.kind == CostKind::trial; });
    REQUIRE(trial != variant.cost.lines.end());
    // Mortises, tenons, haunches and grooves: 4 of 300 x 60 x 22, rough of 325 x 66 x 27, are
    // 0.0023166 m3; / 0.7 is 0.00330943 m3, at 1150.
    CHECK(trial->money == Money{381});
  }
}

TEST_CASE("Variants differ by what changed alone") {
  const Rates rates = rates_of(hand_rates(R"("margin": 0.2)"));
  const QuoteVariant oiled = quoted(quote_order({cabinet_door()}), rates);
  const QuoteVariant bare = quoted(quote_order({cabinet_door(R"(, "finish": "none")")}), rates);
  CHECK(cents(bare, CostGroup::finish) == 0);
  CHECK(cents(bare, CostGroup::material) == cents(oiled, CostGroup::material));
  CHECK(cents(bare, CostGroup::bought_in) == cents(oiled, CostGroup::bought_in));
  CHECK(minutes_text(oiled.hours.total - bare.hours.total) == "22.68");  // as hours_test.cpp has it
  // Set-ups, work on it, and so labour; the oil; overhead and contingency on them.
  CHECK(differences(oiled, bare, "EUR").size() == 6);
}

TEST_CASE("What is not all counted is told to cost no less") {
  Rates rates = rates_of(hand_rates(R"("margin": 0.2)"));
  const QuoteVariant beech = quoted(quote_order({cabinet_door()}), rates);
  rates.wood.clear();
  const QuoteVariant unpriced = quoted(quote_order({cabinet_door()}), rates);
  REQUIRE(!unpriced.cost.missing.empty());
  CHECK(differences(beech, unpriced, "EUR") ==
        std::vector<std::string>{"not compared, as not all of it is counted"});
}

// One board makes four of them: the fifth begins another.
TEST_CASE("A rise from one quantity to the next is told, though both are cheaper than one") {
  QuoteReport report;
  report.rates = example_rates();
  const auto order = quote_order({example("side-door")});
  for (const std::int64_t quantity : {1, 2, 3, 4, 5, 6})
    report.variants.push_back(quoted(order, report.rates, quantity, yard("161.7")));
  std::size_t rises = 0;
  for (std::size_t i = 2; i < report.variants.size(); ++i) {
    const bool dearer = report.variants[i].cost.of(CostGroup::material).hundredths *
                            report.variants[i - 1].asked.quantity >
                        report.variants[i - 1].cost.of(CostGroup::material).hundredths *
                                report.variants[i].asked.quantity +
                            100;
    const Rises told = rises_to(report, report.variants[i]);
    if (dearer) {
      ++rises;
      CHECK(told.from == &report.variants[i - 1]);
      CHECK(!told.what.empty());
    }
  }
  CHECK(rises > 0);
}

TEST_CASE("Payments add up to the price, and to its tax") {
  QuoteReport report;
  report.rates = example_rates();
  report.variants.push_back(quoted(quote_order({example("mill-yard")}), report.rates));
  report.paper.stages = {33.3, 33.3, 33.4};
  Money price, all;
  for (const StageAmount& stage : stages_in(report)) {
    price += stage.price;
    all += stage.to_pay();
  }
  CHECK(price == report.variants.front().price.asked);
  CHECK(all == report.variants.front().price.to_pay());
}

TEST_CASE(
    "Orders are taken as they are wanted, and late are those that a week's hours do not reach") {
  QuoteReport report;
  report.rates = rates_of(hand_rates(R"("margin": 0.2, "hours_a_week": 7)"));  // an hour a day
  report.paper.date = std::chrono::sys_days(std::chrono::year(2031) / 5 / 1);
  report.variants.push_back(
      quoted(quote_order({cabinet_door(R"(, "id": "later", "due": "2031-05-07")"),
                          cabinet_door(R"(, "id": "sometime")"),
                          cabinet_door(R"(, "id": "first", "due": "2031-05-05")")}),
             report.rates));
  const std::vector<OrderDue> orders = orders_due(report);
  REQUIRE(orders.size() == 3);
  CHECK(orders[0].item == 2);
  CHECK(orders[1].item == 0);
  CHECK(orders[2].item == 1);
  for (std::size_t i = 0; i < orders.size(); ++i) {
    const auto days = (*orders[i].ready - *report.paper.date).count();
    CHECK(static_cast<double>(days) >= orders[i].until);
    CHECK(static_cast<double>(days) < orders[i].until + 1);
  }
  CHECK(orders[2].days_late() == 0);
  CHECK(std::abs(orders[2].until - report.variants.front().hours.total.hours()) < 1e-9);
}

}  // namespace haunch
