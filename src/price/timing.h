// Rows of a notebook, matched with the work that is planned.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "actuals.h"

namespace haunch {

/// An order of one day.
using JobName = std::pair<std::string, std::string>;

/// Rows of one job that name the same work, put together.
struct Timing {
  JobName job;
  std::string name;  // of the work, as the row has it
  std::vector<const HourLine*> lines;
  double taken = 0;
  bool of_some = false;     // pieces, else of all
  double pieces_share = 1;  // of the planned pieces that it was done to

  double planned_of(const HourLine& line) const;
  double planned() const;
  double ratio() const { return taken / planned(); }
};

struct Timings {
  std::vector<Timing> all;
  std::vector<Problem> problems;  // rows of unknown orders or work, with their offsets
};

/// What the timings point to is in `jobs`, which outlive them.
Timings timings_of(const std::vector<ActualRow>& rows, const std::vector<PlannedJob>& jobs);

}  // namespace haunch
