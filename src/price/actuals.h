// What earlier work took, held against what is planned for it: rates put right by jobs, and how far
// an order may be off.
//
// A row tells of the minutes that an operation, a group of them or the whole of an order took.
// Their ratio to the minutes planned corrects every rate under the row. It counts for a rate as
// much as the rate's share of the minutes that are planned under it: one for the row that names the
// operation itself, little for a whole job. Where a job timed an operation by itself, its wider
// rows say nothing of that.
//
// Of the ratios of a rate the geometric mean, weighted so, is taken; n is the sum of the weights.
// The given rate counts for kPriorJobs jobs more, and for those that it was corrected by before, so
// that it moves by n / (n + kPriorJobs) of the way, on a scale of logarithms. This is the
// credibility of Buehlmann ("Experience rating and credibility", ASTIN Bulletin 4, 1967), whose
// factor is n / (n + k); our k is a choice.
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
  std::string operation;  // "mortise"; "cope" of all coping; "machining"; "all" or nothing
  WorkTime minutes;
  std::optional<std::int64_t> pieces;  // that they were for; nothing: all that are planned
  std::string date;                    // as written
  // Where they stand in the text, for problems; of an operation that is not written the row.
  std::uint32_t order_offset = 0, operation_offset = 0, minutes_offset = 0, pieces_offset = 0;
};

/// What is planned for an order by itself, its set-ups its own, with the rates as given.
struct PlannedJob {
  std::string order;  // the item's id
  std::int64_t quantity = 1;
  HoursPlan hours;
};

/// Each item planned as an order of its own, in a shop of these machines. `items` stand in the
/// order's quantity already; `names` are what a notebook calls them.
std::vector<PlannedJob> planned_alone(const std::vector<HourItem>& items,
                                      const std::vector<std::string>& names,
                                      const std::vector<Machine>& machines, const Rates& rates);

/// One order of one day, by the rows that tell most of it: minutes taken, and planned by the rates
/// as corrected.
struct JobOutcome {
  std::string order, date;
  double taken = 0, planned = 0;
  double covers = 1;  // share of all its planned minutes that its rows tell of

  /// Of all its minutes to those planned, where what is not told of took what was planned.
  double ratio() const { return 1 - covers + covers * taken / planned; }
};

/// What jobs come to.
struct CorrectedRates {
  Rates rates;
  std::vector<JobOutcome> jobs;
  std::vector<std::string> doubts;  // rows that are over ten times off, in words
  // Rows of unknown jobs or operations, with their offsets; with any nothing is corrected.
  std::vector<Problem> problems;
};

CorrectedRates corrected_by(const Rates& rates, const std::vector<ActualRow>& rows,
                            const std::vector<PlannedJob>& jobs);

/// Hours of an order between bounds.
struct HoursRange {
  std::size_t jobs = 0;
  double likely = 0;
  double worst = 0;  // as badly off as the worst job so far; at least likely
  // Nine times of ten it is between these: a prediction of the next job by Student's t of the
  // logarithms of kJobsOfRange jobs or more.
  std::optional<double> nine_least = {}, nine_most = {};
};

/// Of no job all is as likely.
HoursRange range_of_hours(double likely, const std::vector<JobOutcome>& jobs);

}  // namespace haunch
