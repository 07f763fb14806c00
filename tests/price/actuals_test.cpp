// What jobs took, held against what was planned: rates that few jobs correct little, and how far an
// order may be off.
#include "actuals.h"

#include <cmath>
#include <random>

#include "actuals_file.h"
#include "priced.h"
#include "student.h"

namespace haunch {
namespace {

using namespace test;

std::string small_door(const std::string& id) {
  return R"({"kind": "door", "units": "mm", "use": "cabinet", "clearance": 3, "thickness": 22,
             "opening": {"width": 406, "height": 706}, "stile_width": 60, "rail_widths": [60, 60],
             "panels": 1, "tenon_depth": 40, "groove_depth": 10, "id": ")" +
         id + "\"}";
}

/// The orders of a notebook, each planned by itself.
std::vector<PlannedJob> planned(const std::vector<std::string>& specs, const Rates& rates) {
  const PricedOrder order = order_of(specs);
  std::vector<std::string> names;
  for (const ItemReport& item : order.report.items)
    names.push_back(item.job->id);
  return planned_alone(order.items, names, order.report.machines, rates);
}

std::vector<ActualRow> rows_of(const std::string& csv) {
  ActualsReading reading = read_actuals(csv);
  for (const Problem& problem : reading.problems)
    UNSCOPED_INFO(problem.path << ": " << problem.message);
  REQUIRE(reading.problems.empty());
  return reading.rows;
}

CorrectedRates corrected(const Rates& rates, const std::string& csv) {
  CorrectedRates result = corrected_by(rates, rows_of(csv), planned({small_door("a")}, rates));
  for (const Problem& problem : result.problems)
    UNSCOPED_INFO(problem.message);
  REQUIRE(result.problems.empty());
  return result;
}

const OperationRate& rate_called(const Rates& rates, const std::string& name) {
  const OperationRate* rate = rate_of(rates, name);
  REQUIRE(rate != nullptr);
  return *rate;
}

TEST_CASE("One job that took half as long again moves a rate by a sixth of the way") {
  const Rates rates = example_rates();
  // Mortises: 12 to set up, 4 joints at 4.5: 30 minutes planned.
  const CorrectedRates result = corrected(rates, "order,operation,minutes\na,mortise,45\n");
  const OperationRate& rate = rate_called(result.rates, "mortise");
  CHECK(rate.setup.minutes() == Approx(12 * std::pow(1.5, 1.0 / 6)).margin(0.001));
  CHECK(rate.each[2]->minutes() == Approx(4.5 * std::pow(1.5, 1.0 / 6)).margin(0.001));
  CHECK(rate.standing.source == RateSource::corrected);
  CHECK(rate.standing.backing.jobs == 1);
  CHECK_FALSE(range_of(rate.standing.backing));
  CHECK(rate_called(result.rates, "groove") == rate_called(rates, "groove"));
}

TEST_CASE("A job that took as long as planned corrects nothing, and stands behind its rate") {
  const CorrectedRates result =
      corrected(example_rates(), "order,operation,minutes\na,mortise,30\n");
  const OperationRate& rate = rate_called(result.rates, "mortise");
  CHECK(minutes_text(rate.setup) == "12");
  CHECK(rate.standing.backing.jobs == 1);
}

TEST_CASE(
    "A row of part of the pieces is held against that part of the run, and the whole set-up") {
  // One stile of two: 12 + 18 / 2.
  const CorrectedRates result =
      corrected(example_rates(), "order,operation,minutes,pieces\na,mortise,21,1\n");
  CHECK(minutes_text(rate_called(result.rates, "mortise").setup) == "12");
}

TEST_CASE("A row means the operation of its name, and all that begin so only where there is none") {
  const Rates rates = example_rates();
  const Rates tenon = corrected(rates, "order,operation,minutes\na,tenon,54\n").rates;
  CHECK(rate_called(tenon, "tenon").standing.backing.timed == 1);
  CHECK(rate_called(tenon, "tenon-haunch") == rate_called(rates, "tenon-haunch"));
  const Rates first = corrected(rates, "order,operation,minutes\na,first,20\n").rates;
  CHECK(rate_called(first, "first-thickness").standing.backing.jobs == 1);
  CHECK(rate_called(first, "first-face-and-edge").standing.backing.jobs == 1);
}

TEST_CASE("Two rows of one day are one job") {
  const CorrectedRates result = corrected(
      example_rates(),
      "order,operation,minutes,pieces,date\na,mortise,20,,2031-05-17\na,mortise,10,,2031-05-17\n");
  CHECK(minutes_text(rate_called(result.rates, "mortise").setup) == "12");
  CHECK(rate_called(result.rates, "mortise").standing.backing.jobs == 1);
}

TEST_CASE("The wider a row, the less it corrects; all of it by the same factor as one") {
  const Rates rates = example_rates();
  const auto factor = [&](const std::string& row) {
    const CorrectedRates result = corrected(rates, "order,operation,minutes\n" + row);
    return rate_called(result.rates, "mortise").setup.minutes() / 12;
  };
  const HoursPlan hours = planned({small_door("a")}, rates).front().hours;
  double machining = 0;
  for (const HourLine& line : hours.lines)
    if (line.group == WorkGroup::machining) machining += line.total().minutes();
  const double by_name = factor("a,mortise,60\n");
  const double by_group = factor("a,machining," + std::to_string(machining * 2) + "\n");
  const double by_all = factor("a,all," + std::to_string(hours.total.minutes() * 2) + "\n");
  const double by_nothing = factor("a,," + std::to_string(hours.total.minutes() * 2) + "\n");
  CHECK(by_name > by_group);
  CHECK(by_group > by_all);
  CHECK(by_all > 1);
  CHECK(by_all == by_nothing);
  const double weight = 30 / machining;
  CHECK(by_group == Approx(std::pow(2, weight / (weight + kPriorJobs))).margin(0.0001));
}

TEST_CASE("Jobs one notebook after the other correct as much as in one") {
  const Rates rates = example_rates();
  const std::string first =
      "a,mortise,41,,2031-05-01\na,mortise,36,,2031-05-02\na,mortise,52,,2031-05-03\n";
  const std::string second = "a,mortise,33,,2031-05-04\na,mortise,47,,2031-05-05\n";
  const std::string header = "order,operation,minutes,pieces,date\n";
  const Rates at_once = corrected(rates, header + first + second).rates;
  const Rates in_turn = corrected(corrected(rates, header + first).rates, header + second).rates;
  const OperationRate& a = rate_called(at_once, "mortise");
  const OperationRate& b = rate_called(in_turn, "mortise");
  CHECK(b.setup.minutes() == Approx(a.setup.minutes()).margin(0.002));
  CHECK(b.standing.backing.jobs == a.standing.backing.jobs);
  CHECK(b.standing.backing.middle == Approx(a.standing.backing.middle).margin(0.001));
  CHECK(b.standing.backing.spread == Approx(a.standing.backing.spread).margin(0.001));
  CHECK(b.standing.backing.jobs == 5);
}

TEST_CASE("Corrected rates are written and read back as the same") {
  const Rates rates =
      corrected(example_rates(), "order,operation,minutes\na,mortise,47\na,tenon,31\na,all,700\n")
          .rates;
  CHECK(rates_of(rates_text(rates)) == rates);
}

TEST_CASE("Each order of a notebook is planned by itself, its set-ups its own") {
  const Rates rates = example_rates();
  const std::vector<PlannedJob> both = planned({small_door("a"), small_door("b")}, rates);
  const std::vector<PlannedJob> one = planned({small_door("a")}, rates);
  REQUIRE(both.size() == 2);
  CHECK(both[1].order == "b");
  CHECK(both[0].hours.total == one[0].hours.total);
  CHECK(both[1].hours.total == one[0].hours.total);
}

TEST_CASE("What is unknown in a notebook is told with its place") {
  const std::string text = "order,operation,minutes\nside,mortise,30\na,mortice,30\na,dovetail,9\n";
  const Rates rates = example_rates();
  const CorrectedRates result =
      corrected_by(rates, rows_of(text), planned({small_door("a")}, rates));
  REQUIRE(result.problems.size() == 3);
  CHECK(result.rates == rates);
  CHECK(result.problems[0].message ==
        "\"side\" is no order that is given here; give its spec too, or leave the row out");
  CHECK(*result.problems[0].offset == text.find("side"));
  CHECK(result.problems[1].message ==
        "\"mortice\" is no work of \"a\", as \"mortise\" is; write an operation, a group (milling, "
        "machining, bench, finish, site), or all");
  CHECK(*result.problems[1].offset == text.find("mortice"));
  CHECK(result.problems[2].message ==
        "\"a\" has no dovetail in it; look at the order, or at the work");
}

TEST_CASE("A notebook that cannot be read is told where") {
  const auto fault = [](const std::string& text) {
    const ActualsReading reading = read_actuals(text);
    REQUIRE(reading.problems.size() == 1);
    return reading.problems.front().message;
  };
  CHECK(fault("order,operation\na,mortise\n") ==
        "has no column \"minutes\"; the first line is order,operation,minutes,pieces,date");
  CHECK(fault("order,minutes,who\na,3,I\n") ==
        "column \"who\" is not known; the columns are \"order\", \"operation\", \"minutes\", "
        "\"pieces\" and \"date\"");
  CHECK(fault("order,minutes\na,0\n") == "no work takes no time; leave the row out");
  CHECK(fault("order,minutes\na,-4\n") == "-4 is out of range; it must be from 0 to 100000");
  CHECK(fault("order,minutes\n,4\n") == "has no order; every row needs order and minutes");
}

TEST_CASE("Student's t is what tables print") {
  // Of nine of ten, two-sided: as any table of the t distribution has them.
  CHECK(student_t(kNineOfTen, 1) == Approx(6.3138).margin(1e-4));
  CHECK(student_t(kNineOfTen, 2) == Approx(2.9200).margin(1e-4));
  CHECK(student_t(kNineOfTen, 5) == Approx(2.0150).margin(1e-4));
  CHECK(student_t(kNineOfTen, 9) == Approx(1.8331).margin(1e-4));
  CHECK(student_t(kNineOfTen, 30) == Approx(1.6973).margin(1e-4));
}

/// A shop whose true minutes are known: by operation a factor on those that are planned, and each
/// job off by its own.
class SimulatedShop {
 public:
  explicit SimulatedShop(unsigned seed) : random_(seed) {}

  double true_factor() { return std::exp(std::normal_distribution<>(0.1, 0.35)(random_)); }
  double job_factor() { return std::exp(std::normal_distribution<>(0, 0.2)(random_)); }

 private:
  std::mt19937 random_;
};

TEST_CASE("True rates lie within the ranges of corrected ones nine times of ten") {
  const Rates rates = example_rates();
  const std::vector<PlannedJob> jobs = planned({small_door("a")}, rates);
  SimulatedShop shop(17);
  int within = 0;
  int nearer = 0;
  int all = 0;
  for (int run = 0; run < 600; ++run) {
    const double truth = shop.true_factor();
    const int number = 2 + run % 12;
    std::vector<ActualRow> rows;
    for (int job = 0; job < number; ++job)
      rows.push_back({"a",
                      "mortise",
                      WorkTime::from_minutes(30 * truth * shop.job_factor()),
                      {},
                      std::to_string(job)});
    const CorrectedRates result = corrected_by(rates, rows, jobs);
    const OperationRate& rate = rate_called(result.rates, "mortise");
    const auto range = range_of(rate.standing.backing);
    REQUIRE(range);
    const double corrected = rate.setup.minutes() / 12;
    ++all;
    within += truth >= corrected * range->least && truth <= corrected * range->most ? 1 : 0;
    nearer += std::abs(std::log(truth / corrected)) <= std::abs(std::log(truth)) ? 1 : 0;
  }
  // Exactly nine of ten by Student's t, a little more as ranges are stretched to the rate.
  CHECK(within >= all * 0.88);
  CHECK(within <= all * 0.97);
  // And as a rule they are nearer to the truth than what was given.
  CHECK(nearer >= all * 0.85);
}

TEST_CASE("The next job ends within the range of ten or more nine times of ten") {
  SimulatedShop shop(23);
  int within = 0;
  const int all = 1000;
  for (int run = 0; run < all; ++run) {
    const double truth = shop.true_factor();
    std::vector<JobOutcome> jobs(10 + static_cast<std::size_t>(run % 8));
    for (JobOutcome& job : jobs) {
      job.planned = 400;
      job.taken = 400 * truth * shop.job_factor();
    }
    const HoursRange range = range_of_hours(10, jobs);
    REQUIRE(range.nine_most);
    const double next = 10 * truth * shop.job_factor();
    within += next >= *range.nine_least && next <= *range.nine_most ? 1 : 0;
    CHECK(range.worst >= range.likely);
  }
  CHECK(within >= all * 0.87);
  CHECK(within <= all * 0.93);
}

TEST_CASE("Fewer than ten jobs give no range of nine of ten, none no worst") {
  CHECK(range_of_hours(10, {}).worst == 10);
  std::vector<JobOutcome> jobs(9, {"a", "", 500, 400});
  const HoursRange range = range_of_hours(10, jobs);
  CHECK(range.worst == Approx(12.5));
  CHECK_FALSE(range.nine_most);
}

TEST_CASE("A job that tells of part of its hours moves the range by that part") {
  const JobOutcome half{"a", "", 400, 200, 0.5};
  CHECK(range_of_hours(10, {half}).worst == Approx(15));
}

TEST_CASE("A row that is over ten times off what is planned is doubted, and counted") {
  const std::string head = "order,operation,minutes,pieces,date\n";
  const CorrectedRates slow = corrected(example_rates(), head + "a,mortise,3000,,2031-05-17\n");
  REQUIRE(slow.doubts.size() == 1);
  CHECK(slow.doubts.front().starts_with("a, 2031-05-17, mortise: 3000 min, where "));
  CHECK(corrected(example_rates(), head + "a,mortise,0.5,,2031-05-17\n").doubts.size() == 1);
  CHECK(corrected(example_rates(), head + "a,mortise,50,,2031-05-17\n").doubts.empty());
}

}  // namespace
}  // namespace haunch
