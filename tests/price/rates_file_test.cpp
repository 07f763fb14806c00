// Rates files: what they say is read as it stands, and what cannot be is told with its place.
#include "rates_file.h"

#include "priced.h"

namespace haunch {
namespace {

using namespace test;

/// "path: message" of each fault.
std::vector<std::string> faults(const std::string& text) {
  std::vector<std::string> all;
  for (const Problem& problem : read_rates(value_of(text)).problems)
    all.push_back(problem.path + ": " + problem.message);
  return all;
}

/// Of a file that is right but for what is said more.
std::string fault_with(const std::string& more) {
  const std::vector<std::string> all = faults(rates_with(more));
  for (const std::string& fault : all)
    UNSCOPED_INFO(fault);
  REQUIRE(all.size() == 1);
  return all.front();
}

TEST_CASE("A rates file is read as it is written") {
  const Rates rates = example_rates();
  CHECK(rates.currency == "EUR");
  CHECK(rates.wage_of("joiner") == 21);
  CHECK(*rates.labour_hour("joiner") == Approx(21 * 1.32 / 0.7));
  CHECK(rates.margin == 0.2);
  CHECK(rates.operations.front().standing.source == RateSource::example);
  CHECK(rates.yield->to_buy(0.7) == Approx(1));
  CHECK(rates.rounding.way == RoundingWay::up);
}

TEST_CASE("What is written as a rates file reads back as the same") {
  const Rates rates = example_rates();
  CHECK(rates_of(rates_text(rates)) == rates);
  const Rates other = rates_of(rates_with(
      R"("note": "own", "tax": 0.19, "rounding": 1, "contingency": 0.1,
         "yield": {"share": 0.75, "of": "net"}, "overhead": {"share": 0.12},
         "operations": {"mortise": {"setup_min": 12.125, "joint_min": 3.3, "source": "corrected",
           "jobs": 4, "worth": 3.2, "timed": 3, "middle": 1.12, "spread": 0.2}},
         "bought_in": {"stair": {"price": 410.5, "per": "piece", "least": 3}},
         "work": [{"what": "fixing", "minutes": 90, "per": "trip", "times": 2, "cost": 4.2}])"));
  CHECK(rates_of(rates_text(other)) == other);
  CHECK(other.yield->to_buy(1) == 1.25);
  CHECK(other.work.front().group == WorkGroup::site);
}

TEST_CASE("Markups may be told by heading") {
  const Rates rates = rates_of(
      R"({"currency": "EUR", "wage": 20, "burden": 0, "billable": 1, "markup":
          {"wood": 0.2, "sheet": 0.15, "bought_in": 0.1, "labour": 0.4}})");
  CHECK(rates.markup->by_heading);
  CHECK(rates.markup->labour == 0.4);
  CHECK(rates_of(rates_text(rates)) == rates);
}

TEST_CASE("A rate stands for all whose first words are its name") {
  const Rates rates = example_rates();
  CHECK(rate_of(rates, "tenon-haunch")->name == "tenon-haunch");
  CHECK(rate_of(rates, "tenon-face-cheek")->name == "tenon");
  CHECK(rate_of(rates, "recess-after-glue-up")->name == "recess");
  CHECK(rate_of(rates, "glue") == nullptr);
  CHECK(goods_called(rates.fittings, "hinges with flaps 100 mm")->price == 8.4);
  CHECK(goods_called(rates.fittings, "hinges") == nullptr);
}

TEST_CASE("What a wage costs, and which share of paid hours earns, must be said") {
  const std::vector<std::string> all = faults(R"({"currency": "EUR", "wage": 20, "margin": 0.2})");
  REQUIRE(all.size() == 2);
  CHECK(all[0] ==
        ": lacks \"burden\", what is paid on a wage beside it, as a share of it; 0 may be said");
  CHECK(all[1] ==
        ": lacks \"billable\", which share of the hours that are paid can be billed; 1 "
        "may be said");
  const Rates rates =
      rates_of(R"({"currency": "EUR", "wage": 20, "burden": 0, "billable": 0, "margin": 0})");
  CHECK_FALSE(rates.labour_hour(""));
}

TEST_CASE("Margin and markup are never confused") {
  CHECK(fault_with(R"("markup": 0.25)") ==
        "/markup: stands beside \"margin\"; a price comes of one of them: keep the margin, a share "
        "of the price, or the markup, on the cost");
  CHECK(faults(R"({"currency": "EUR", "wage": 20, "burden": 0, "billable": 1})") ==
        std::vector<std::string>{": lacks \"margin\", a share of the price, or \"markup\", a share "
                                 "of the cost; 0 may be said"});
  CHECK(faults(R"({"currency": "EUR", "wage": 20, "burden": 0, "billable": 1, "margin": 1})") ==
        std::vector<std::string>{"/margin: 1 is 1 or more; a margin is a share of the price and "
                                 "less than all of it: of 25 % write 0.25"});
  CHECK(faults(R"({"currency": "EUR", "wage": 20, "burden": 0, "billable": 1, "margin": 25})")
            .size() == 1);
}

TEST_CASE("A rate without its unit is told what it lacks") {
  CHECK(fault_with(R"("operations": {"mortise": 4})") ==
        "/operations/mortise: 4 lacks its unit; write {\"piece_min\": 4}, or in place of it "
        "\"metre_min\", \"joint_min\" or \"square_metre_min\"");
  CHECK(fault_with(R"("operations": {"mortise": {"setup_min": 5, "joint": 3}})") ==
        "/operations/mortise/joint: lacks its unit; write \"joint_min\", in minutes");
  CHECK(fault_with(R"("operations": {"mortise": {}})")
            .starts_with("/operations/mortise: does not say how long"));
  CHECK(fault_with(R"("overhead": 14)") ==
        "/overhead: 14 lacks what it is of; write {\"per_hour\": 14}, of an hour that can be "
        "billed, or {\"share\": 0.2}, of the cost");
  CHECK(fault_with(R"("fittings": {"lock": 34})") ==
        "/fittings/lock: 34 lacks its unit; write {\"price\": 34, \"per\": \"piece\"}");
  CHECK(fault_with(R"("glass": {"clear": {"price": 34}})") ==
        "/glass/clear: lacks \"per\", the unit of the price: \"square_metre\", \"piece\" or "
        "\"metre\"");
  CHECK(fault_with(R"("yield": 0.7)") ==
        "/yield: 0.7 does not say of what; write {\"share\": 0.7, \"of\": \"bought\"}, to buy net "
        "/ 0.7, or \"of\": \"net\", to buy net x 1.3");
}

TEST_CASE("Nothing costs or takes less than nothing") {
  CHECK(fault_with(R"("operations": {"mortise": {"setup_min": -2, "piece_min": 1}})") ==
        "/operations/mortise/setup_min: -2 is out of range; it must be from 0 to 10000");
  CHECK(fault_with(R"("contingency": -0.1)") ==
        "/contingency: -0.1 is out of range; it must be from 0 to 1");
  CHECK(fault_with(R"("wood": {"European oak": {"price": -5, "per": "cubic_metre"}})") ==
        "/wood/European oak/price: -5 is out of range; it must be from 0 to 999999");
}

TEST_CASE("Keys and names that are not known are told, with the nearest that is") {
  CHECK(fault_with(R"("operations": {"mortice": {"piece_min": 1}})") ==
        "/operations/mortice: is no operation; did you mean \"mortise\"?");
  CHECK(fault_with(R"("operations": {"mortise": {"peice_min": 1}})") ==
        "/operations/mortise/peice_min: unknown key; did you mean \"piece_min\"?");
  CHECK(fault_with(R"("hours_week": 38)") ==
        "/hours_week: unknown key; did you mean \"hours_a_week\"?");
  CHECK(fault_with(R"("operations": {"mortise": {"piece_min": 1, "trade": "smith"}})") ==
        "/operations/mortise/trade: \"smith\" is no trade of this file; it has none");
}

TEST_CASE("Minutes are taken to the nearest thousandth, however fine a watch tells them") {
  const Rates rates =
      rates_of(rates_with(R"("operations": {"mortise": {"piece_min": 4.7312345}})"));
  CHECK(rates.operations.front().each[0] == WorkTime::from_minutes_thousandths(4731));
}

TEST_CASE("What only a set-up is told of takes nothing itself") {
  const Rates rates = rates_of(rates_with(R"("operations": {"mortise": {"setup_min": 5}})"));
  CHECK(rates.operations.front().setup == WorkTime::from_minutes_thousandths(5000));
  CHECK(rates.operations.front().each[0] == WorkTime());
}

TEST_CASE("What names no trade is of the only one, and a fitting is bought by the piece") {
  const Rates rates = rates_of(
      R"({"currency": "EUR", "trades": {"joiner": 21}, "burden": 0, "billable": 1, "margin": 0.2,
          "operations": {"mortise": {"piece_min": 1}}, "fittings": {"lock": {"price": 34}},
          "finish": {"oil": {"square_metre_min": 4}},
          "work": [{"what": "survey", "minutes": 60, "per": "order"}]})");
  CHECK(rates.operations.front().trade == "joiner");
  CHECK(rates.finish.front().trade == "joiner");
  CHECK(rates.work.front().trade == "joiner");
  CHECK(rates.fittings.front().per == PricedBy::piece);
  CHECK(rates.finish.front().coats == 1);
  CHECK(rates_of(rates_text(rates)) == rates);
}

}  // namespace
}  // namespace haunch
