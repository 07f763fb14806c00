#include "csv_row.h"

#include <fmt/core.h>

#include <iterator>

namespace haunch {

std::string_view csv_start(CsvProfile profile) {
  return profile == CsvProfile::plain ? "" : "\xEF\xBB\xBF";
}

void CsvRow::plain(std::string_view field) {
  if (!first_) out_ += separator();
  first_ = false;
  append_quoted(field);
}

void CsvRow::text(const std::string& field) {
  const bool formula =
      !field.empty() && std::string_view("=+-@\t\r").find(field.front()) != std::string_view::npos;
  plain(formula ? "'" + field : field);
}

void CsvRow::length(const std::optional<Length>& length) {
  if (length)
    number(decimal(*length, unit_));
  else
    plain("");
}

void CsvRow::number(std::string_view decimal) {
  plain(decimal);
  const std::size_t point = decimal.find('.');
  if (profile_ == CsvProfile::semicolon && point != std::string_view::npos)
    out_[out_.size() - decimal.size() + point] = ',';
}

void CsvRow::number(std::optional<double> figure, int places) {
  if (figure)
    number(fmt::format("{:.{}f}", *figure, places));
  else
    plain("");
}

void CsvRow::count(std::int64_t number) {
  plain(std::to_string(number));
}

void CsvRow::end() {
  out_ += profile_ == CsvProfile::plain ? "\n" : "\r\n";
}

void CsvRow::append_quoted(std::string_view field) {
  const char special[] = {separator(), '"', '\r', '\n'};
  if (field.find_first_of(std::string_view(special, std::size(special))) ==
      std::string_view::npos) {
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
