#include "csv_table.h"

#include <algorithm>
#include <optional>
#include <string>
#include <utility>

#include "csv_fields.h"
#include "json_reader.h"

namespace haunch {
namespace {

class CsvReader {
 public:
  explicit CsvReader(std::string_view text)
      : decimal_comma_(csv_separator(text) == ';'), rows_(text, csv_separator(text)) {}

  CsvReading read(std::string_view mark) {
    result_.rows.kind = Value::Kind::list;
    auto header = rows_.next();
    while (header && !mark.empty() && take_setting(*header, mark))
      header = rows_.next();
    if (!header) {
      problem("the table is empty; its first line names the columns", 0);
      return std::move(result_);
    }
    if (take_header(*header))
      while (auto row = rows_.next())
        if (!take_row(*row)) break;
    add(result_.problems, rows_.take_problems());
    return std::move(result_);
  }

 private:
  void problem(std::string message, std::uint32_t offset) {
    result_.problems.push_back({"", std::move(message), offset});
  }

  /// False when it is the header.
  bool take_setting(const std::vector<CsvField>& row, std::string_view mark) {
    const auto filled = [](const CsvField& field) { return !field.text.empty(); };
    if (std::none_of(row.begin(), row.end(), filled)) return true;
    const bool marked = std::any_of(row.begin(), row.end(),
                                    [&](const CsvField& field) { return field.text == mark; });
    const bool pair = row.size() >= 2 && filled(row[0]) && filled(row[1]) &&
                      std::none_of(row.begin() + 2, row.end(), filled);
    if (marked || !pair) return false;
    const std::string name = row[0].text;
    if (std::any_of(result_.settings.begin(), result_.settings.end(),
                    [&](const Entry& setting) { return setting.key == name; }))
      problem("\"" + name + "\" is set twice; keep one", row[0].offset);
    result_.settings.push_back({name, row[0].offset, value_of(row[1])});
    return true;
  }

  Value value_of(const CsvField& field) const { return csv_value(field, decimal_comma_); }

  bool take_header(const std::vector<CsvField>& header) {
    for (const CsvField& field : header) {
      const std::string name = field.text;
      if (name.empty())
        problem("column " + std::to_string(names_.size() + 1) + " has no name", field.offset);
      else if (std::find(names_.begin(), names_.end(), name) != names_.end())
        problem("column \"" + name + "\" is there twice; keep one", field.offset);
      names_.push_back(name);
      result_.header.push_back({name, field.offset, {}});
    }
    return result_.problems.empty();
  }

  /// False when there are too many values: no more is read.
  bool take_row(const std::vector<CsvField>& row) {
    count_ += row.size();
    if (count_ > kMaxValues) {
      problem("more than " + std::to_string(kMaxValues) + " fields in one table",
              row.front().offset);
      return false;
    }
    const bool blank = std::all_of(row.begin(), row.end(),
                                   [](const CsvField& field) { return field.text.empty(); });
    if (blank) return true;
    if (row.size() != names_.size()) {
      tell_wrong_width(row);
      return true;
    }
    Value object;
    object.kind = Value::Kind::object;
    object.offset = row.front().offset;
    for (std::size_t i = 0; i < row.size(); ++i) {
      if (!row[i].text.empty())
        object.entries.push_back({names_[i], row[i].offset, value_of(row[i])});
    }
    result_.rows.list.push_back(std::move(object));
    return true;
  }

  void tell_wrong_width(const std::vector<CsvField>& row) {
    if (rows_.unclosed()) return;
    const bool more = row.size() > names_.size();
    problem("the row has " + std::to_string(row.size()) +
                (row.size() == 1 ? " field," : " fields,") + " the header " +
                std::to_string(names_.size()) +
                (more ? "; a decimal comma is a point here, and words with a comma stand in quotes"
                      : "; leave a field empty, but keep its comma"),
            more ? row[names_.size()].offset : row.back().offset);
  }

  bool decimal_comma_;
  CsvCutter rows_;
  std::size_t count_ = 0;  // of fields in rows
  std::vector<std::string> names_;
  CsvReading result_;
};

}  // namespace

CsvReading read_csv(std::string_view text, std::string_view mark) {
  return CsvReader(text).read(mark);
}

}  // namespace haunch
