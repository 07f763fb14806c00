// A run's report, item after item: the same items as a page, as JSON or as CSV.
#pragma once

#include <string>
#include <vector>

#include "report.h"
#include "spec_source.h"
#include "tally.h"
#include "view.h"

namespace haunch {

/// Turns items into text, one at a time, so that memory does not grow with their number.
///
/// A table and a CSV have one unit: the one asked for, else the first item's. In JSON each item has
/// its own unless one was asked for.
class ReportStream {
 public:
  explicit ReportStream(const View& view) : view_(view) {}

  /// Text of one item, with what stands before it.
  std::string item(const ItemReport& report);
  /// Text of the end: JSON lists everything that could not be worked, a page says how much that
  /// was, so that a sheet of paper with less than all on it shows it. CSV stays data.
  std::string end(const std::vector<PlacedProblem>& errors, const Tally& tally);

 private:
  std::string head() const;
  Unit unit() const { return view_.unit.value_or(first_unit_); }

  View view_;
  bool any_ = false;
  Unit first_unit_ = Unit::mm;
};

}  // namespace haunch
