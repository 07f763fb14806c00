#include "actuals_file.h"

#include <algorithm>
#include <array>
#include <utility>

#include "csv_table.h"
#include "day.h"
#include "encoding.h"
#include "value_reader.h"

namespace haunch {
namespace {

const std::vector<std::string_view> kColumns = {"order", "operation", "minutes", "pieces", "date"};
constexpr std::array<std::string_view, 2> kNeeded = {"order", "minutes"};
constexpr double kMostMinutes = 100'000;
constexpr int kMostPieces = 1'000'000;

/// Reads the rows; every fault is a problem with its place.
class ActualsReader {
 public:
  explicit ActualsReader(CsvReading csv) : csv_(std::move(csv)), values_({}, "") {}

  ActualsReading read() {
    check_columns();
    if (problems_.empty() && csv_.problems.empty())
      for (const Value& row : csv_.rows.list)
        read_row(row);
    add(problems_, std::move(csv_.problems));
    std::stable_sort(problems_.begin(), problems_.end(),
                     [](const Problem& a, const Problem& b) { return *a.offset < *b.offset; });
    if (!problems_.empty()) return {{}, std::move(problems_)};
    return {std::move(rows_), {}};
  }

 private:
  void check_columns() {
    const std::uint32_t start = csv_.header.empty() ? 0 : csv_.header.front().offset;
    for (const std::string_view needed : kNeeded)
      if (std::none_of(csv_.header.begin(), csv_.header.end(),
                       [&](const Entry& column) { return column.key == needed; }))
        problems_.push_back({"",
                             "has no column \"" + std::string(needed) +
                                 "\"; the first line is order,operation,minutes,pieces,date",
                             start});
    for (const Entry& column : csv_.header)
      if (std::find(kColumns.begin(), kColumns.end(), column.key) == kColumns.end())
        problems_.push_back({"",
                             "column \"" + column.key + "\" is not known; the columns are " +
                                 quoted_list(kColumns, "and"),
                             column.offset});
  }

  void read_row(const Value& row) {
    ActualRow actual;
    actual.order_offset = actual.operation_offset = actual.minutes_offset = row.offset;
    if (const Value* order = needed(row, "order")) {
      actual.order = order->text;
      actual.order_offset = order->offset;
    }
    if (const Value* operation = row.find("operation")) {
      actual.operation = operation->text;
      actual.operation_offset = operation->offset;
    }
    if (const Value* minutes = needed(row, "minutes")) read_minutes(*minutes, actual);
    if (const Value* pieces = row.find("pieces")) actual.pieces_offset = pieces->offset;
    if (const Value* pieces = row.find("pieces"))
      actual.pieces = values_.whole_number(*pieces, "column pieces", 1, kMostPieces);
    if (const Value* date = row.find("date")) {
      actual.date = date->text;
      if (!actual.date.empty() && !day_of(actual.date))
        values_.problem("column date",
                        "\"" + actual.date + "\" is no day; write year, month and day: 2031-05-17");
    }
    for (Problem& problem : values_.take_problems()) {
      const Value* value = row.find(problem.path.substr(problem.path.find(' ') + 1));
      problem.offset = value == nullptr ? row.offset : value->offset;
      problems_.push_back(std::move(problem));
    }
    rows_.push_back(std::move(actual));
  }

  void read_minutes(const Value& minutes, ActualRow& actual) {
    actual.minutes_offset = minutes.offset;
    const auto read = values_.number(minutes, "column minutes", 0, kMostMinutes, "minutes");
    if (!read) return;
    actual.minutes = WorkTime::from_minutes(*read);
    if (actual.minutes == WorkTime())
      values_.problem("column minutes", "no work takes no time; leave the row out");
  }

  const Value* needed(const Value& row, std::string_view column) {
    const Value* value = row.find(column);
    if (value == nullptr)
      problems_.push_back({"",
                           "has no " + std::string(column) + "; every row needs order and minutes",
                           row.offset});
    return value;
  }

  CsvReading csv_;
  ValueReader values_;
  std::vector<ActualRow> rows_;
  std::vector<Problem> problems_;
};

}  // namespace

ActualsReading read_actuals(std::string_view text) {
  if (auto problem = encoding_problem(text)) return {{}, {std::move(*problem)}};
  return ActualsReader(read_csv(text, "order")).read();
}

}  // namespace haunch
