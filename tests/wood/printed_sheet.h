// A sheet as a joiner has it: read back from the printed page, with nothing else to go by.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace haunch::test {

/// A table, its cells as they stand on the page.
struct PrintedTable {
  std::string above;  // the words between it and the table or heading before it
  std::vector<std::string> titles;
  std::vector<std::vector<std::string>> rows;

  bool has(std::string_view title) const;
  /// Empty where there is no such column.
  std::string cell(const std::vector<std::string>& row, std::string_view title) const;
  std::optional<double> figure(const std::vector<std::string>& row, std::string_view title) const;
};

struct PrintedSection {
  std::string heading;
  std::vector<PrintedTable> tables;
  std::string below;  // the words after the last table
};

struct PrintedSheet {
  std::string head;  // all before the first section
  std::vector<PrintedSection> sections;

  /// Those whose heading begins so.
  std::vector<const PrintedSection*> named(std::string_view heading) const;
  /// Of all of those.
  std::vector<const PrintedTable*> tables(std::string_view heading) const;
};

PrintedSheet read_sheet(const std::string& page);

/// "A B" as single marks.
std::vector<std::string> marks_in(const std::string& cell);

/// A figure of the page, which may have been rounded; none where it is no figure.
std::optional<double> figure_in(const std::string& cell);

/// The figure that stands before these words: 70 in "14.85 thick, 70 deep" before " deep".
std::optional<double> figure_before(const std::string& text, std::string_view words);

/// "13 to 76.5, 118.5 to 182" as pairs.
std::vector<std::pair<double, double>> spans_in(const std::string& cell);

}  // namespace haunch::test
