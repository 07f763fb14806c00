#include "csv_row.h"

namespace haunch {

std::string_view csv_start(bool for_spreadsheet) {
  return for_spreadsheet ? "\xEF\xBB\xBF" : "";
}

void CsvRow::plain(std::string_view field) {
  if (!first_) out_ += ',';
  first_ = false;
  append_quoted(field);
}

void CsvRow::text(const std::string& field) {
  const bool formula =
      !field.empty() && std::string_view("=+-@\t\r").find(field.front()) != std::string_view::npos;
  plain(formula ? "'" + field : field);
}

void CsvRow::length(const std::optional<Length>& length) {
  plain(length ? decimal(*length, unit_) : "");
}

void CsvRow::count(std::int64_t number) {
  plain(std::to_string(number));
}

void CsvRow::end() {
  out_ += crlf_ ? "\r\n" : "\n";
}

void CsvRow::append_quoted(std::string_view field) {
  if (field.find_first_of(",\"\r\n") == std::string_view::npos) {
    out_ += field;
    return;
  }
  out_ += '"';
  for (const char character : field) {
    if (character == '"') out_ += '"';
    out_ += character;
  }
  out_ += '"';
}

}  // namespace haunch
