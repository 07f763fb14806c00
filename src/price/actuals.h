// What earlier work took, held against what is planned for it: rates put right by jobs, and how far
// an order may be off.
//
// A row tells of the minutes that an operation, a group of them or the whole of an order took. The
// ratio of these to the minutes planned corrects every rate under the row. A row counts for a rate
// as much as the rate's share of the minutes that are planned under it: one for the row that names
// the operation itself, little for a whole job.
//
// Of the ratios of a rate the geometric mean, weighted so, is taken; n is the sum of the weights.
// The given rate counts for kPriorJobs jobs more, so that it moves by n / (n + kPriorJobs) of the
// way: the credibility of Bühlmann (1967), on logarithms of ratios.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "document.h"
#include "hours.h"
#include "rates.h"

namespace haunch {

/// How many jobs a rate that is given counts for.
inline constexpr double kPriorJobs = 5;
/// So many jobs make a range of nine times of ten.
inline constexpr std::size_t kJobsOfRange = 10;

/// A row of the notebook, as it was read.
struct ActualRow {
  std::string order;      // an item's id
  std::string operation;  // "mortise", "tenon" of all tenon work, "machining", "all" or nothing
  WorkTime minutes;
  std::optional<std::int64_t> pieces;  // that they were for; nothing: all that are planned
  std::string date;                    // as written
  std::string path = {};               // of the row in its document, for problems
};

/// What is planned for an order by itself, its set-ups its own, with the rates as given.
struct PlannedJob {
  std::string order;
  std::int64_t quantity = 1;
  HoursPlan hours;
};

/// One order of one day, by the rows that tell most of it: minutes taken, and planned by the rates
/// as corrected.
struct JobOutcome {
  std::string order, date;
  WorkTime taken, planned;

  double ratio() const;
};

/// What jobs come to.
struct CorrectedRates {
  Rates rates;
  std::vector<JobOutcome> jobs;
  std::vector<Problem>
      problems;  // rows of unknown jobs or operations; with any nothing is corrected
};

CorrectedRates corrected_by(const Rates& rates, const std::vector<ActualRow>& rows,
                            const std::vector<PlannedJob>& jobs);

/// Hours of an order between bounds.
struct HoursRange {
  double likely = 0;
  std::optional<double> worst = {};  // as badly off as the worst job so far; at least likely
  // Nine times of ten it is between these: a prediction of the next job by Student's t of the
  // logarithms of kJobsOfRange jobs or more.
  std::optional<double> nine_least = {}, nine_most = {};
};
HoursRange range_of_hours(double likely, const std::vector<JobOutcome>& jobs);

}  // namespace haunch
