// A run's report, item after item: the same items as a page, as JSON or as CSV.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "item_sheet.h"
#include "report.h"
#include "spec_source.h"
#include "tally.h"
#include "view.h"

namespace haunch {

/// One item as it goes out, or as it waits for those that stand on its page.
struct ToldItem {
  std::string text;
  std::optional<ItemSheet> sheet;
};

/// Turns items into text, one at a time or as a page a batch at a time, so that memory does not
/// grow with their number.
///
/// A table and a CSV have one unit: the one asked for, else the first item's. In JSON each item has
/// its own unless one was asked for.
class ReportStream {
 public:
  explicit ReportStream(const View& view) : view_(view) {}

  /// How many items are told together at most.
  static constexpr std::size_t kMostOfBatch = 500;

  ToldItem item(const ItemReport& report);
  /// The same of one that another was told before. Several threads may ask at once.
  ToldItem following_item(const ItemReport& report) const;
  bool has_items() const { return any_; }
  /// Text that can go out with an item.
  std::string take(ToldItem item);
  /// Keeps what could not be worked for the end, where the format has a place for it.
  void note(const std::vector<PlacedProblem>& errors);
  /// Text of the end in pieces: JSON lists everything that was noted, a page says how much that
  /// was, so that a sheet of paper with less than all on it shows it. CSV stays data.
  std::vector<std::string> end(const Tally& tally);

 private:
  std::string head() const;
  ToldItem told(const ItemReport& report, std::string before, bool first) const;
  std::string batch();
  Unit unit() const { return view_.unit.value_or(first_unit_); }

  View view_;
  bool any_ = false;
  std::vector<ItemSheet> batch_;  // told, and not gone out
  std::size_t batches_ = 0;       // that went out
  Unit first_unit_ = Unit::mm;
  /// As JSON, which is a fifth of what they are as values, and in pieces, which need not be moved
  /// as they grow: of 100 000 bad lines there are many.
  std::vector<std::string> errors_;
};

}  // namespace haunch
