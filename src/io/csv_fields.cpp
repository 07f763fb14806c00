#include "csv_fields.h"

#include <algorithm>
#include <utility>

#include "encoding.h"

namespace haunch {
namespace {

std::string trimmed(std::string_view text) {
  const auto first = text.find_first_not_of(" \t");
  if (first == std::string_view::npos) return {};
  return std::string(text.substr(first, text.find_last_not_of(" \t") - first + 1));
}

/// Text that began with one of these was guarded by an apostrophe on its way into a spreadsheet
/// (CsvRow::text).
void take_off_guard(std::string& text) {
  constexpr std::string_view kGuarded = "=+-@\t\r";
  if (text.size() > 1 && text.front() == '\'' && kGuarded.find(text[1]) != std::string_view::npos)
    text.erase(0, 1);
}

bool is_number(const std::string& text) {
  const std::size_t start = text.starts_with('-') ? 1 : 0;
  const std::string digits = text.substr(start);
  return !digits.empty() && digits.find_first_not_of("0123456789.") == std::string::npos &&
         std::count(digits.begin(), digits.end(), '.') <= 1 && digits.front() != '.' &&
         digits.back() != '.';
}

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

/// "70,5 mm" as "70.5 mm". A text with several commas or with a point is none with a decimal comma.
std::string with_point(std::string text) {
  const std::size_t comma = text.find(',');
  const bool is_decimal = comma != std::string::npos && comma > 0 && comma + 1 < text.size() &&
                          text.find(',', comma + 1) == std::string::npos &&
                          text.find('.') == std::string::npos && is_digit(text[comma - 1]) &&
                          is_digit(text[comma + 1]);
  if (is_decimal) text[comma] = '.';
  return text;
}

}  // namespace

Value csv_value(const CsvField& field, bool decimal_comma) {
  Value value;
  value.text = decimal_comma ? with_point(field.text) : field.text;
  value.kind = is_number(value.text) ? Value::Kind::number : Value::Kind::text;
  value.offset = field.offset;
  return value;
}

std::string column_letters(std::size_t column) {
  constexpr std::size_t kLetters = 26;
  std::string letters;
  for (std::size_t left = column + 1; left > 0; left = (left - 1) / kLetters)
    letters.insert(letters.begin(), static_cast<char>('A' + (left - 1) % kLetters));
  return letters;
}

char csv_separator(std::string_view text) {
  char found = ',';
  bool quoted = false, filled = false;
  for (const char c : text.substr(start_of(text))) {
    if (c == '"') quoted = !quoted;
    const bool ends = !quoted && (c == '\n' || c == '\r');
    if (ends && filled) break;
    filled = filled || !ends;
    if (quoted) continue;
    if (c == ';') return ';';
    if (c == '\t') found = '\t';
  }
  return found;
}

CsvCell cell_at(std::string_view text, std::size_t offset, char separator) {
  CsvCutter cutter(text, separator);
  CsvCell cell;
  while (const auto row = cutter.next()) {
    if (row->front().offset > offset) break;
    cell = {cutter.row(), 0};
    for (const CsvField& field : *row)
      if (field.offset <= offset) ++cell.column;
  }
  return cell;
}

CsvCutter::CsvCutter(std::string_view text, char separator)
    : text_(text), separator_(separator), at_(start_of(text)) {}

void CsvCutter::problem(std::string message, std::size_t offset) {
  problems_.push_back({"", std::move(message), static_cast<std::uint32_t>(offset)});
}

std::vector<Problem> CsvCutter::take_problems() {
  return std::exchange(problems_, {});
}

void CsvCutter::skip_line_end() {
  if (ended()) return;
  at_ += text_.substr(at_, 2) == "\r\n" ? 2U : 1U;
  ++next_row_;
}

std::optional<std::vector<CsvField>> CsvCutter::next() {
  while (!ended() && at_line_end())
    skip_line_end();
  if (ended()) return {};
  row_ = next_row_;
  std::vector<CsvField> fields;
  fields.push_back(next_field());
  while (!ended() && text_[at_] == separator_) {
    ++at_;
    fields.push_back(next_field());
  }
  skip_line_end();
  return fields;
}

CsvField CsvCutter::next_field() {
  while (at_blank())
    ++at_;
  CsvField field{{}, static_cast<std::uint32_t>(at_)};
  const bool quoted = !ended() && text_[at_] == '"';
  if (quoted) read_quoted(field);
  const std::size_t start = at_;
  while (!at_line_end() && text_[at_] != separator_)
    ++at_;
  const std::string rest = trimmed(text_.substr(start, at_ - start));
  if (!quoted)
    field.text = rest;
  else if (!rest.empty())
    problem("\"" + rest + "\" follows the closing quote; double a quote that is meant", start);
  field.text = trimmed(field.text);
  take_off_guard(field.text);
  return field;
}

void CsvCutter::read_quoted(CsvField& field) {
  for (++at_; !ended(); ++at_) {
    if (text_[at_] != '"') {
      field.text += text_[at_];
      continue;
    }
    if (text_.substr(at_, 2) != "\"\"") {
      ++at_;
      return;
    }
    field.text += text_[at_++];
  }
  unclosed_ = true;
  problem("a quote is opened here and never closed", field.offset);
}

}  // namespace haunch
