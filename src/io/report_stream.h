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
  /// The same of one that another was written before. Several threads may ask at once.
  std::string following_item(const ItemReport& report) const;
  bool has_items() const { return any_; }
  /// Keeps what could not be worked for the end, where the format has a place for it.
  void note(const std::vector<PlacedProblem>& errors);
  /// Text of the end in pieces: JSON lists everything that was noted, a page says how much that
  /// was, so that a sheet of paper with less than all on it shows it. CSV stays data.
  std::vector<std::string> end(const Tally& tally);

 private:
  std::string head() const;
  void append(std::string& text, const ItemReport& report, bool first) const;
  Unit unit() const { return view_.unit.value_or(first_unit_); }

  View view_;
  bool any_ = false;
  Unit first_unit_ = Unit::mm;
  /// As JSON, which is a fifth of what they are as values, and in pieces, which need not be moved
  /// as they grow: of 100 000 bad lines there are many.
  std::vector<std::string> errors_;
};

}  // namespace haunch
