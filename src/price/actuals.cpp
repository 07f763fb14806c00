#include "actuals.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <tuple>
#include <utility>

#include "operation_names.h"
#include "student.h"

namespace haunch {
namespace {

constexpr std::string_view kAll = "all";

/// A rate, by where it stands.
using RateName = std::pair<RateList, std::string>;

/// An order of one day.
using JobName = std::pair<std::string, std::string>;

/// Rows of one job that name the same work, put together.
struct Timing {
  JobName job;
  std::vector<const HourLine*> lines;
  double taken = 0;
  double pieces_share = 1;  // of the planned pieces that it was done to

  double planned_of(const HourLine& line) const {
    return line.setup.minutes() + line.run.minutes() * pieces_share;
  }
  double planned() const {
    double sum = 0;
    for (const HourLine* line : lines)
      sum += planned_of(*line);
    return sum;
  }
  double ratio() const { return taken / planned(); }
};

/// What one job says of one rate.
struct Saying {
  JobName job;
  double taken = 0, planned = 0;
  double weight = 1;

  double logarithm() const { return std::log(taken / planned); }
};

bool is_group(std::string_view name) {
  return std::find(std::begin(kWords<WorkGroup>), std::end(kWords<WorkGroup>), name) !=
         std::end(kWords<WorkGroup>);
}

bool is_named_by(const HourLine& line, const std::string& name) {
  if (name.empty() || name == kAll) return true;
  if (is_group(name)) return word_of(line.group) == name;
  return is_family_of(hyphened(name), hyphened(line.operation));
}

/// Rows matched with the work that is planned.
class Notebook {
 public:
  Notebook(const std::vector<ActualRow>& rows, const std::vector<PlannedJob>& jobs) : jobs_(jobs) {
    for (const ActualRow& row : rows)
      take(row);
    for (auto& [key, entry] : entries_)
      entries.push_back(std::move(entry));
  }

  std::vector<Timing> entries;
  std::vector<Problem> problems;

 private:
  using Key = std::tuple<std::string, std::string, std::string>;

  void problem(std::string message, std::string column, std::uint32_t offset) {
    problems.push_back({"column " + std::move(column), std::move(message), offset});
  }

  const PlannedJob* job_of(const ActualRow& row) {
    const auto its = std::find_if(jobs_.begin(), jobs_.end(),
                                  [&](const PlannedJob& job) { return job.order == row.order; });
    if (its != jobs_.end()) return &*its;
    std::vector<std::string_view> known;
    for (const PlannedJob& job : jobs_)
      known.push_back(job.order);
    problem("\"" + row.order + "\" is no order that is given here" + offered(row.order, known) +
                "; give its spec too, or leave the row out",
            "order", row.order_offset);
    return nullptr;
  }

  static std::string offered(const std::string& name, const std::vector<std::string_view>& known) {
    const std::string_view nearest = nearest_word(name, known);
    return nearest.empty() ? "" : ", as \"" + std::string(nearest) + "\" is";
  }

  void take(const ActualRow& row) {
    const PlannedJob* job = job_of(row);
    if (job == nullptr) return;
    Timing entry;
    entry.job = {row.order, row.date};
    for (const HourLine& line : job->hours.lines)
      if (is_named_by(line, row.operation)) entry.lines.push_back(&line);
    if (entry.lines.empty()) {
      not_of_it(row, *job);
      return;
    }
    entry.pieces_share = row.pieces ? pieces_share(row, *job, entry.lines) : 1;
    if (entry.planned() <= 0) {
      problem("no minutes are planned for it, so that nothing can be corrected by what it took",
              "operation", row.operation_offset);
      return;
    }
    add(row, std::move(entry));
  }

  /// Of what was not worked by the piece: so many of the items.
  static double pieces_share(const ActualRow& row, const PlannedJob& job,
                             const std::vector<const HourLine*>& lines) {
    std::int64_t planned = job.quantity;
    if (!row.operation.empty() && row.operation != kAll && !is_group(row.operation)) {
      planned = 0;
      for (const HourLine* line : lines)
        planned = std::max(planned, line->pieces);
    }
    return static_cast<double>(*row.pieces) /
           static_cast<double>(std::max<std::int64_t>(planned, 1));
  }

  /// Rows of one job and work add up: their minutes, and the pieces where they tell of them.
  void add(const ActualRow& row, Timing entry) {
    entry.taken = row.minutes.minutes();
    const Key key{row.order, row.date, row.operation};
    const auto [its, is_new] = entries_.try_emplace(key, entry);
    if (is_new) return;
    its->second.taken += entry.taken;
    if (row.pieces) its->second.pieces_share += entry.pieces_share;
  }

  void not_of_it(const ActualRow& row, const PlannedJob& job) {
    std::vector<std::string_view> known{kAll};
    known.insert(known.end(), std::begin(kWords<WorkGroup>), std::end(kWords<WorkGroup>));
    for (const HourLine& line : job.hours.lines)
      known.push_back(line.operation);
    const std::string name = hyphened(row.operation);
    if (names_operation(name) || is_group(name))
      problem("\"" + row.order + "\" has no " + row.operation +
                  " in it; look at the order, or at "
                  "the work",
              "operation", row.operation_offset);
    else
      problem("\"" + row.operation + "\" is no work of \"" + row.order + "\"" +
                  offered(row.operation, known) +
                  "; write an operation, a group (milling, machining, bench, finish, site), or all",
              "operation", row.operation_offset);
  }

  const std::vector<PlannedJob>& jobs_;
  std::map<Key, Timing> entries_;
};

/// By rate what jobs say of it.
class Sayings {
 public:
  explicit Sayings(const std::vector<Timing>& entries) {
    for (const bool timed : {true, false})
      for (const Timing& entry : entries)
        take(entry, timed);
  }

  const std::map<RateName, std::vector<Saying>>& all() const { return all_; }

 private:
  /// Of each rate under a row: those that are timed by themselves, or those that are not.
  void take(const Timing& entry, bool timed) {
    std::map<RateName, double> planned;
    for (const HourLine* line : entry.lines)
      planned[{line->list, line->rate}] += entry.planned_of(*line);
    const bool is_timed = planned.size() == 1;
    if (is_timed != timed) return;
    const double whole = entry.planned();
    for (const auto& [rate, minutes] : planned)
      if (minutes > 0)
        say(rate, {entry.job, entry.ratio() * minutes, minutes, is_timed ? 1 : minutes / whole});
  }

  void say(const RateName& rate, const Saying& saying) {
    std::vector<Saying>& its = all_[rate];
    const bool timed = saying.weight == 1;
    const auto own = std::find_if(its.begin(), its.end(), [&](const Saying& other) {
      return other.job == saying.job && other.weight == 1;
    });
    if (own == its.end()) {
      its.push_back(saying);
    } else if (timed) {
      own->taken += saying.taken;
      own->planned += saying.planned;
    }
  }

  std::map<RateName, std::vector<Saying>> all_;
};

/// Mean and standard deviation of logarithms.
struct Sample {
  double number = 0, mean = 0, spread = 0;

  double squares() const { return number > 1 ? (number - 1) * spread * spread : 0; }
};

Sample sample_of(const std::vector<double>& figures) {
  Sample sample{static_cast<double>(figures.size())};
  if (figures.empty()) return sample;
  for (const double figure : figures)
    sample.mean += figure / sample.number;
  double squares = 0;
  for (const double figure : figures)
    squares += (figure - sample.mean) * (figure - sample.mean);
  if (sample.number > 1) sample.spread = std::sqrt(squares / (sample.number - 1));
  return sample;
}

/// Two samples as one.
Sample together(const Sample& a, const Sample& b) {
  Sample sum{a.number + b.number};
  if (sum.number == 0) return sum;
  sum.mean = (a.number * a.mean + b.number * b.mean) / sum.number;
  const double between = a.number * b.number / sum.number * (a.mean - b.mean) * (a.mean - b.mean);
  if (sum.number > 1)
    sum.spread = std::sqrt((a.squares() + b.squares() + between) / (sum.number - 1));
  return sum;
}

/// To the millionth, as a rates file keeps it.
double kept(double figure) {
  constexpr double kMillion = 1e6;
  return std::round(figure * kMillion) / kMillion;
}

/// By what a rate is multiplied, and how it stands then.
struct RateCorrection {
  double factor = 1;
  RateStanding standing;
};

RateCorrection correction_of(const RateStanding& before, const std::vector<Saying>& sayings) {
  double worth = 0;
  double sum = 0;
  std::vector<double> timed;
  std::set<JobName> jobs;
  for (const Saying& saying : sayings) {
    worth += saying.weight;
    sum += saying.weight * saying.logarithm();
    jobs.insert(saying.job);
    if (saying.weight == 1) timed.push_back(saying.logarithm());
  }
  const Backing& old = before.backing;
  const double way = sum / (worth + old.worth + kPriorJobs);
  const Sample sample = together({static_cast<double>(old.timed), std::log(old.middle), old.spread},
                                 sample_of(timed));
  RateCorrection correction{std::exp(way), {RateSource::corrected, {}}};
  correction.standing.backing = {old.jobs + static_cast<int>(jobs.size()), kept(old.worth + worth),
                                 old.timed + static_cast<int>(timed.size()),
                                 sample.number > 0 ? kept(std::exp(sample.mean - way)) : 1,
                                 kept(sample.spread)};
  return correction;
}

WorkTime times(WorkTime time, double factor) {
  return WorkTime::from_minutes(time.minutes() * factor);
}

void correct(OperationRate& rate, const RateCorrection& by) {
  rate.setup = times(rate.setup, by.factor);
  for (auto& each : rate.each)
    if (each) each = times(*each, by.factor);
  rate.standing = by.standing;
}

void correct(Finish& finish, const RateCorrection& by) {
  finish.setup = times(finish.setup, by.factor);
  finish.square_metre = times(finish.square_metre, by.factor);
  finish.standing = by.standing;
}

void correct(OtherWork& work, const RateCorrection& by) {
  work.minutes = times(work.minutes, by.factor);
  work.standing = by.standing;
}

const std::string& name_of(const OtherWork& work) {
  return work.what;
}
template <class Rate>
const std::string& name_of(const Rate& rate) {
  return rate.name;
}

using Factors = std::map<RateName, double>;

/// Corrects those of one list that jobs say something of.
template <class Rate>
void correct_all(std::vector<Rate>& rates, RateList list,
                 const std::map<RateName, std::vector<Saying>>& sayings, Factors& factors) {
  for (Rate& rate : rates) {
    const auto its = sayings.find({list, name_of(rate)});
    if (its == sayings.end()) continue;
    const RateCorrection correction = correction_of(rate.standing, its->second);
    correct(rate, correction);
    factors[its->first] = correction.factor;
  }
}

/// How jobs ended: rows that tell of more first, and of work that is told of already none more.
class Outcomes {
 public:
  Outcomes(std::vector<Timing> entries, const std::vector<PlannedJob>& jobs, const Factors& factors)
      : factors_(factors) {
    std::stable_sort(entries.begin(), entries.end(), [](const Timing& a, const Timing& b) {
      return a.lines.size() > b.lines.size();
    });
    for (const Timing& entry : entries)
      take(entry);
    for (auto& [name, outcome] : outcomes_)
      outcome.covers = outcome.planned / std::max(outcome.planned, whole(name, jobs));
  }

  std::vector<JobOutcome> all() const {
    std::vector<JobOutcome> jobs;
    for (const auto& [name, outcome] : outcomes_)
      jobs.push_back(outcome);
    return jobs;
  }

 private:
  double corrected(const HourLine& line, double minutes) const {
    const auto its = factors_.find({line.list, line.rate});
    return its == factors_.end() ? minutes : minutes * its->second;
  }

  void take(const Timing& entry) {
    std::set<const HourLine*>& told = told_[entry.job];
    if (std::any_of(entry.lines.begin(), entry.lines.end(),
                    [&](const HourLine* line) { return told.count(line) != 0; }))
      return;
    told.insert(entry.lines.begin(), entry.lines.end());
    JobOutcome& outcome = outcomes_[entry.job];
    outcome.order = entry.job.first;
    outcome.date = entry.job.second;
    outcome.taken += entry.taken;
    for (const HourLine* line : entry.lines)
      outcome.planned += corrected(*line, entry.planned_of(*line));
  }

  double whole(const JobName& name, const std::vector<PlannedJob>& jobs) const {
    double sum = 0;
    for (const PlannedJob& job : jobs)
      if (job.order == name.first)
        for (const HourLine& line : job.hours.lines)
          sum += corrected(line, line.total().minutes());
    return sum;
  }

  const Factors& factors_;
  std::map<JobName, std::set<const HourLine*>> told_;
  std::map<JobName, JobOutcome> outcomes_;
};

}  // namespace

std::vector<PlannedJob> planned_alone(const std::vector<HourItem>& items,
                                      const std::vector<std::string>& names,
                                      const std::vector<Machine>& machines, const Rates& rates) {
  std::vector<PlannedJob> jobs;
  for (std::size_t item = 0; item < items.size(); ++item) {
    const SetupPlan plan = plan_setups({*items[item].item}, machines);
    jobs.push_back({names[item], items[item].item->quantity, hours_of(plan, {items[item]}, rates)});
  }
  return jobs;
}

CorrectedRates corrected_by(const Rates& rates, const std::vector<ActualRow>& rows,
                            const std::vector<PlannedJob>& jobs) {
  CorrectedRates result{rates, {}, {}};
  Notebook notebook(rows, jobs);
  result.problems = std::move(notebook.problems);
  if (!result.problems.empty()) return result;
  const Sayings sayings(notebook.entries);
  Factors factors;
  correct_all(result.rates.operations, RateList::operations, sayings.all(), factors);
  correct_all(result.rates.finish, RateList::finish, sayings.all(), factors);
  correct_all(result.rates.work, RateList::work, sayings.all(), factors);
  result.jobs = Outcomes(std::move(notebook.entries), jobs, factors).all();
  return result;
}

HoursRange range_of_hours(double likely, const std::vector<JobOutcome>& jobs) {
  HoursRange range{likely};
  if (jobs.empty()) return range;
  std::vector<double> logarithms;
  double worst = 1;
  for (const JobOutcome& job : jobs) {
    worst = std::max(worst, job.ratio());
    logarithms.push_back(std::log(job.ratio()));
  }
  range.worst = likely * worst;
  if (jobs.size() < kJobsOfRange) return range;
  const Sample sample = sample_of(logarithms);
  const double reach = student_t(kNineOfTen, static_cast<int>(jobs.size()) - 1) * sample.spread *
                       std::sqrt(1 + 1 / sample.number);
  range.nine_least = likely * std::exp(sample.mean - reach);
  range.nine_most = likely * std::exp(sample.mean + reach);
  return range;
}

}  // namespace haunch
