// One line of a CSV table.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "haunch/length_text.h"
#include "view.h"

namespace haunch {

/// What a CSV text begins with: a byte order mark for spreadsheets, else nothing.
std::string_view csv_start(CsvProfile profile);

/// Appends a line to `out`, field by field; lengths as decimals in `unit`.
class CsvRow {
 public:
  CsvRow(std::string& out, Unit unit, CsvProfile profile)
      : out_(out), unit_(unit), profile_(profile) {}

  /// A field of our own words.
  void plain(std::string_view field);
  /// A decimal number, with a point.
  void number(std::string_view decimal);
  /// Empty where there is no figure.
  void number(std::optional<double> figure, int places);
  /// A field with a user's words: guarded, so that no spreadsheet takes it for a formula.
  void text(const std::string& field);
  void length(const std::optional<Length>& length);
  void count(std::int64_t number);
  Unit unit() const { return unit_; }
  void end();

 private:
  char separator() const { return profile_ == CsvProfile::semicolon ? ';' : ','; }
  void append_quoted(std::string_view field);

  std::string& out_;
  Unit unit_;
  CsvProfile profile_;
  bool first_ = true;
};

}  // namespace haunch
