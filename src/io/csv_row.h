// One line of a CSV table.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "haunch/length_text.h"

namespace haunch {

/// What a CSV text begins with: a byte order mark for spreadsheets, else nothing.
std::string_view csv_start(bool for_spreadsheet);

/// Appends a line to `out`, field by field; lengths as decimals in `unit`.
class CsvRow {
 public:
  CsvRow(std::string& out, Unit unit, bool for_spreadsheet)
      : out_(out), unit_(unit), crlf_(for_spreadsheet) {}

  /// A field of our own words and numbers.
  void plain(std::string_view field);
  /// A field with a user's words: guarded, so that no spreadsheet takes it for a formula.
  void text(const std::string& field);
  void length(const std::optional<Length>& length);
  void count(std::int64_t number);
  void end();

 private:
  void append_quoted(std::string_view field);

  std::string& out_;
  Unit unit_;
  bool crlf_;
  bool first_ = true;
};

}  // namespace haunch
