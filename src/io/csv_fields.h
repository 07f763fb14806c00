// CSV (RFC 4180, and as spreadsheets write it) cut into rows of fields.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "document.h"

namespace haunch {

struct CsvField {
  std::string text;  // without its quotes and the blanks round it
  std::uint32_t offset = 0;
};

/// As a document has it: a number or words. With `decimal_comma`, "70,5" is the number 70.5 and
/// "70,5 mm" the words "70.5 mm".
Value csv_value(const CsvField& field, bool decimal_comma);

/// The column's letters, as a spreadsheet has them: 0 is "A", 26 "AA".
std::string column_letters(std::size_t column);

/// What parts the columns: a semicolon or a tab if the first line that is not empty has one outside
/// quotes, else a comma.
char csv_separator(std::string_view text);

/// Where a field stands in a sheet, both counted from 1. A line break within quotes begins no row.
struct CsvCell {
  std::size_t row = 1;
  std::size_t column = 1;
};

/// Of the byte at `offset`.
CsvCell cell_at(std::string_view text, std::size_t offset, char separator);

/// Cuts a text from its start on. Rows end with \n, \r\n or \r; a byte order mark and empty lines
/// are passed over.
class CsvCutter {
 public:
  CsvCutter(std::string_view text, char separator);

  /// The fields of the next row that is not an empty line.
  std::optional<std::vector<CsvField>> next();
  /// Of the one given last; the first line of the text is row 1.
  std::size_t row() const { return row_; }
  /// A quote went on to the end of the text.
  bool unclosed() const { return unclosed_; }
  /// What was wrong since it was last asked, each with an offset.
  std::vector<Problem> take_problems();

 private:
  bool ended() const { return at_ >= text_.size(); }
  bool at_line_end() const { return ended() || text_[at_] == '\n' || text_[at_] == '\r'; }
  bool at_blank() const {
    return !ended() && (text_[at_] == ' ' || (text_[at_] == '\t' && separator_ != '\t'));
  }
  void skip_line_end();
  CsvField next_field();
  void read_quoted(CsvField& field);
  void problem(std::string message, std::size_t offset);

  std::string_view text_;
  char separator_;
  std::size_t at_;
  std::size_t row_ = 0, next_row_ = 1;
  bool unclosed_ = false;
  std::vector<Problem> problems_;
};

}  // namespace haunch
