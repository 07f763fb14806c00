// Hours of orders, as a joiner would reckon them on the back of the drawing.
#include "hours.h"

#include "priced.h"

namespace haunch {
namespace {

using namespace test;

/// A cabinet door of 400 x 700 mm: two stiles, two rails with tenons 40 deep and a haunch each, a
/// panel of two strips.
std::string cabinet_door(const std::string& more = "") {
  return R"({"kind": "door", "units": "mm", "use": "cabinet", "clearance": 3, "thickness": 22,
             "opening": {"width": 406, "height": 706}, "stile_width": 60, "rail_widths": [60, 60],
             "panels": 1, "tenon_depth": 40, "groove_depth": 10)" +
         more + "}";
}

/// The mill yard's door: hinges, a lock, muntins.
std::string mill_yard() {
  std::stringstream text;
  text << std::ifstream(std::string(HAUNCH_EXAMPLES) + "/mill-yard.json").rdbuf();
  return text.str();
}

Rates hand_rates() {
  return rates_of(rates_with(R"("operations": {
    "crosscut": {"setup_min": 1, "piece_min": 2}, "rip": {"setup_min": 2, "metre_min": 1},
    "first": {"setup_min": 3, "metre_min": 2}, "face-and-edge": {"setup_min": 3, "metre_min": 1},
    "thickness": {"setup_min": 2, "metre_min": 1}, "glue-up": {"joint_min": 4},
    "glue-up-boards": {"setup_min": 5, "joint_min": 6}, "mortise": {"setup_min": 12, "joint_min": 4.5},
    "tenon": {"setup_min": 15, "joint_min": 3}, "groove": {"setup_min": 10, "metre_min": 1.2},
    "sand": {"square_metre_min": 10}},
    "finish": {"oil": {"coats": 3, "setup_min": 5, "square_metre_min": 4, "hours_between": 12}},
    "work": [{"what": "survey", "minutes": 45, "per": "order"},
             {"what": "packing", "minutes": 5, "per": "item"}])"));
}

std::string in_short(const HourLine& line) {
  return std::to_string(line.setups) + " x " + minutes_text(line.setup_each) + " + " +
         quantity_text(line.quantity) + " " + std::string(word_of(line.unit)) + " x " +
         minutes_text(line.each) + " = " + minutes_text(line.total());
}

TEST_CASE("The hours of a cabinet door, by hand to the minute") {
  const PricedOrder order = order_of({cabinet_door()});
  std::vector<HourItem> items = order.items;
  items.front().finish = "oil";
  const HoursPlan hours = hours_of(order.report.plan, items, hand_rates());
  REQUIRE(hours.lacking.empty());

  // Stiles 700 + 25 long, rails 280 + 2 x 40 + 25, the panel 598 + 25 in two strips: six pieces at
  // three lengths. Along them 2 x 0.725 + 2 x 0.385 + 2 x 0.623 = 3.466 m.
  CHECK(in_short(line_of(hours, "crosscut-over-length")) == "3 x 1 + 6 piece x 2 = 15");
  CHECK(in_short(line_of(hours, "rip-over-width")) == "2 x 2 + 3.47 metre x 1 = 7.47");
  CHECK(in_short(line_of(hours, "first-face-and-edge")) == "1 x 3 + 3.47 metre x 2 = 9.94");
  CHECK(in_short(line_of(hours, "first-thickness")) == "2 x 3 + 3.47 metre x 2 = 12.94");
  CHECK(in_short(line_of(hours, "glue-up-boards")) == "1 x 5 + 1 joint x 6 = 11");
  // From here on the panel is one piece; 1.45 + 0.77 = 2.22 m without it, 2.843 m with it.
  CHECK(in_short(line_of(hours, "face-and-edge")) == "1 x 3 + 2.22 metre x 1 = 5.22");
  CHECK(in_short(line_of(hours, "thickness")) == "2 x 2 + 2.85 metre x 1 = 6.85");
  CHECK(in_short(line_of(hours, "rip-to-width")) == "2 x 2 + 2.85 metre x 1 = 6.85");
  CHECK(in_short(line_of(hours, "crosscut-to-length")) == "3 x 1 + 5 piece x 2 = 13");
  // Four corners. Grooves the whole length: 2 x 0.7 + 2 x 0.36 = 2.12 m.
  CHECK(in_short(line_of(hours, "mortise")) == "1 x 12 + 4 joint x 4.5 = 30");
  CHECK(in_short(line_of(hours, "tenon")) == "1 x 15 + 4 joint x 3 = 27");
  CHECK(in_short(line_of(hours, "tenon-haunch")) == "1 x 15 + 4 joint x 3 = 27");
  CHECK(in_short(line_of(hours, "groove")) == "1 x 10 + 2.12 metre x 1.2 = 12.544");
  CHECK(in_short(line_of(hours, "glue-up")) == "1 x 0 + 4 joint x 4 = 16");
  // Both faces and the edges 2 x (0.4 x 0.7 + 1.1 x 0.022) = 0.6084 m2, and round the panel the
  // sight edges beside it: 1.72 x (0.022 - 0.0076) = 0.0248.
  CHECK(in_short(line_of(hours, "sand")) == "1 x 0 + 0.64 square_metre x 10 = 6.4");
  CHECK(in_short(line_of(hours, "finish-oil")) == "3 x 5 + 1.92 square_metre x 4 = 22.68");
  CHECK(in_short(line_of(hours, "survey")) == "0 x 0 + 1 order x 45 = 45");
  CHECK(in_short(line_of(hours, "packing")) == "0 x 0 + 1 item x 5 = 5");
  CHECK(minutes_text(hours.total) == "279.894");

  REQUIRE(hours.waiting.size() == 2);
  CHECK(hours.waiting[0].what == "rest after first milling");
  CHECK(hours.waiting[0].hours == 24);
  CHECK(hours.waiting[1].what == "oil: between 3 coats");
  CHECK(hours.waiting[1].hours == 24);
}

TEST_CASE("Set-ups and what is done once an order are done once, however many are made") {
  const PricedOrder order = order_of({cabinet_door()});
  const HoursPlan one = order.hours(hand_rates());
  const HoursPlan four = order.hours(hand_rates(), 4);
  REQUIRE(one.lines.size() == four.lines.size());
  for (std::size_t i = 0; i < one.lines.size(); ++i) {
    const bool once = one.lines[i].unit == WorkUnit::order;
    INFO(one.lines[i].operation);
    CHECK(four.lines[i].setup == one.lines[i].setup);
    CHECK(four.lines[i].run == one.lines[i].run * (once ? 1 : 4));
  }
}

TEST_CASE("One hour of many takes no longer than one of few") {
  for (const std::string& spec : {cabinet_door(), mill_yard()}) {
    const PricedOrder order = order_of({spec});
    const Rates rates = example_rates();
    double before = order.hours(rates).total.minutes();
    for (std::int64_t quantity = 2; quantity <= 60; ++quantity) {
      const double each =
          order.hours(rates, quantity).total.minutes() / static_cast<double>(quantity);
      CHECK(each <= before);
      before = each;
    }
  }
}

TEST_CASE("Lines multiply out and add up, and so does what each item bears of them") {
  PricedOrder order = order_of({cabinet_door(R"(, "id": "a", "quantity": 3)"), mill_yard()});
  for (HourItem& item : order.items)
    item.finish = "oil";
  const HoursPlan hours = order.hours(example_rates(), 7);
  REQUIRE(hours.lacking.empty());
  WorkTime total;
  for (const HourLine& line : hours.lines) {
    INFO(line.operation);
    CHECK(line.setup == line.setup_each * line.setups);
    CHECK(line.run == time_for(line.each, line.quantity));
    WorkTime setup;
    WorkTime run;
    for (const ItemTime& item : line.items) {
      setup += item.setup;
      run += item.run;
    }
    CHECK(setup == line.setup);
    CHECK(run == line.run);
    total += line.total();
  }
  CHECK(total == hours.total);
}

TEST_CASE("A set-up is borne by those that run on it, in proportion to their pieces") {
  const PricedOrder order =
      order_of({cabinet_door(R"(, "id": "a", "quantity": 3)"), cabinet_door(R"(, "id": "b")")});
  const HourLine mortise = line_of(order.hours(hand_rates()), "mortise");
  CHECK(mortise.setups == 1);
  REQUIRE(mortise.items.size() == 2);
  CHECK(minutes_text(mortise.items[0].setup) == "9");  // 6 stiles of 8
  CHECK(minutes_text(mortise.items[1].setup) == "3");
}

TEST_CASE("What is hung is fitted and hung, on site where its frame stands already") {
  const PricedOrder order = order_of({mill_yard()});
  const HoursPlan hours = order.hours(example_rates());
  REQUIRE(hours.lacking.empty());
  CHECK(in_short(line_of(hours, "fit-hinges-with-flaps-100-mm")) == "1 x 0 + 3 piece x 9 = 27");
  CHECK(in_short(line_of(hours, "fit-lock")) == "1 x 0 + 1 piece x 25 = 25");
  CHECK(line_of(hours, "hang-leaf-on-site").group == WorkGroup::site);

  std::vector<HourItem> items = order.items;
  items.front().hung = false;
  for (const HourLine& line : hours_of(order.report.plan, items, example_rates()).lines) {
    CHECK_FALSE(line.operation.starts_with("fit-"));
    CHECK_FALSE(line.operation.starts_with("hang-"));
  }
}

TEST_CASE(
    "An operation without a rate is named, with what there is of it, and never taken as none") {
  Rates rates = hand_rates();
  std::erase_if(rates.operations, [](const OperationRate& it) { return it.name == "mortise"; });
  const HoursPlan hours = order_of({cabinet_door()}).hours(rates);
  const std::vector<Problem> problems = problems_of(hours);
  REQUIRE(problems.size() == 1);
  CHECK(problems[0].path == "/operations");
  CHECK(problems[0].message ==
        "no rate is given for \"mortise\", of which there is: 1 set-up, 2 pieces, 0.13 metres, 4 "
        "joints; add \"mortise\": {\"setup_min\": …, \"piece_min\", \"metre_min\" or "
        "\"joint_min\": …}");
}

TEST_CASE("A rate that counts what there is none of is no rate") {
  Rates rates = rates_of(rates_with(R"("operations": {"crosscut": {"joint_min": 3}})"));
  const std::vector<Problem> problems = problems_of(order_of({cabinet_door()}).hours(rates));
  REQUIRE_FALSE(problems.empty());
  CHECK(problems[0].path == "/operations/crosscut");
  CHECK(problems[0].message ==
        "counts nothing of \"crosscut-over-length\", of which there is: 3 set-ups, 6 pieces, 0.58 "
        "metres; add \"piece_min\" or \"metre_min\", or a rate for \"crosscut-over-length\"");
}

TEST_CASE("Every example can be reckoned by the example of a rates file") {
  const Rates rates = example_rates();
  for (const auto& file : std::filesystem::directory_iterator(HAUNCH_EXAMPLES)) {
    if (file.path().extension() != ".json") continue;
    std::stringstream text;
    text << std::ifstream(file.path()).rdbuf();
    if (text.str().starts_with('[')) continue;  // several items, one of which takes the others
    INFO(file.path());
    for (const Problem& problem : problems_of(order_of({text.str()}).hours(rates)))
      FAIL_CHECK(problem.message);
  }
}

}  // namespace
}  // namespace haunch
