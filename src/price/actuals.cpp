#include "actuals.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <utility>

#include "sample.h"
#include "student.h"
#include "timing.h"

namespace haunch {
namespace {

/// A rate, by where it stands.
using RateName = std::pair<RateList, std::string>;

/// What one job says of one rate.
struct Saying {
  JobName job;
  double taken = 0, planned = 0;
  double weight = 1;

  double logarithm() const { return std::log(taken / planned); }
};

/// By rate what jobs say of it.
class Sayings {
 public:
  explicit Sayings(const std::vector<Timing>& timings) {
    for (const bool timed : {true, false})
      for (const Timing& timing : timings)
        take(timing, timed);
  }

  const std::map<RateName, std::vector<Saying>>& all() const { return all_; }

 private:
  /// Of each rate under a row: those that are timed by themselves, or those that are not.
  void take(const Timing& timing, bool timed) {
    std::map<RateName, double> planned;
    for (const HourLine* line : timing.lines)
      planned[{line->list, line->rate}] += timing.planned_of(*line);
    const bool is_timed = planned.size() == 1;
    if (is_timed != timed) return;
    const double whole = timing.planned();
    for (const auto& [rate, minutes] : planned)
      if (minutes > 0)
        say(rate, {timing.job, timing.ratio() * minutes, minutes, is_timed ? 1 : minutes / whole});
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
  Outcomes(std::vector<Timing> timings, const std::vector<PlannedJob>& jobs, const Factors& factors)
      : factors_(factors) {
    std::stable_sort(timings.begin(), timings.end(), [](const Timing& a, const Timing& b) {
      return a.lines.size() > b.lines.size();
    });
    for (const Timing& timing : timings)
      take(timing);
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

  void take(const Timing& timing) {
    std::set<const HourLine*>& told = told_[timing.job];
    if (std::any_of(timing.lines.begin(), timing.lines.end(),
                    [&](const HourLine* line) { return told.count(line) != 0; }))
      return;
    told.insert(timing.lines.begin(), timing.lines.end());
    JobOutcome& outcome = outcomes_[timing.job];
    outcome.order = timing.job.first;
    outcome.date = timing.job.second;
    outcome.taken += timing.taken;
    for (const HourLine* line : timing.lines)
      outcome.planned += corrected(*line, timing.planned_of(*line));
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

/// Of what took over ten times what is planned for it, or under a tenth.
std::vector<std::string> doubts_of(const std::vector<Timing>& timings) {
  constexpr double kFar = 10;
  std::vector<std::string> doubts;
  for (const Timing& timing : timings) {
    if (timing.ratio() <= kFar && timing.ratio() >= 1 / kFar) continue;
    const auto& [order, date] = timing.job;
    std::string doubt = order;
    if (!date.empty()) doubt += ", " + date;
    doubt += ", " + (timing.name.empty() ? "all" : timing.name) + ": ";
    doubt += minutes_text(WorkTime::from_minutes(timing.taken)) + " min, where ";
    doubt += minutes_text(WorkTime::from_minutes(timing.planned())) + " are planned";
    doubts.push_back(std::move(doubt));
  }
  return doubts;
}

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
  CorrectedRates result{rates, {}, {}, {}};
  Timings timings = timings_of(rows, jobs);
  result.problems = std::move(timings.problems);
  if (!result.problems.empty()) return result;
  result.doubts = doubts_of(timings.all);
  const Sayings sayings(timings.all);
  Factors factors;
  correct_all(result.rates.operations, RateList::operations, sayings.all(), factors);
  correct_all(result.rates.finish, RateList::finish, sayings.all(), factors);
  correct_all(result.rates.work, RateList::work, sayings.all(), factors);
  result.jobs = Outcomes(std::move(timings.all), jobs, factors).all();
  return result;
}

HoursRange range_of_hours(double likely, const std::vector<JobOutcome>& jobs) {
  HoursRange range{jobs.size(), likely, likely};
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
