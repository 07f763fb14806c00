#include "json_text.h"

#include <fmt/format.h>

#include <charconv>
#include <iterator>

namespace haunch {
namespace {

bool needs_escape(char character) {
  const auto byte = static_cast<unsigned char>(character);
  return byte < 0x20 || character == '"' || character == '\\';
}

void append_escaped(std::string& out, char character) {
  constexpr std::string_view kHex = "0123456789abcdef";
  switch (character) {
    case '"':
      out += "\\\"";
      return;
    case '\\':
      out += "\\\\";
      return;
    case '\n':
      out += "\\n";
      return;
    case '\r':
      out += "\\r";
      return;
    case '\t':
      out += "\\t";
      return;
    default:
      break;
  }
  const auto byte = static_cast<unsigned char>(character);
  out += "\\u00";
  out += kHex[byte >> 4U];
  out += kHex[byte & 0xFU];
}

}  // namespace

void JsonText::before_value() {
  if (comma_) out_ += row_ ? "," : ", ";
  if (row_) out_ += "\n  ";
  row_ = false;
  comma_ = true;
}

void JsonText::open(char bracket) {
  before_value();
  out_ += bracket;
  comma_ = false;
}

void JsonText::close(char bracket) {
  out_ += bracket;
  comma_ = true;
}

void JsonText::key(std::string_view name) {
  before_value();
  out_ += '"';
  out_ += name;
  out_ += "\": ";
  comma_ = false;
}

void JsonText::text(std::string_view value) {
  before_value();
  out_ += '"';
  std::size_t done = 0;
  for (std::size_t i = 0; i < value.size(); ++i) {
    if (!needs_escape(value[i])) continue;
    out_ += value.substr(done, i - done);
    append_escaped(out_, value[i]);
    done = i + 1;
  }
  out_ += value.substr(done);
  out_ += '"';
}

void JsonText::number(Length value) {
  before_value();
  append_decimal(out_, value, unit_);
}

void JsonText::number(std::int64_t value) {
  before_value();
  char digits[24];
  const auto written = std::to_chars(std::begin(digits), std::end(digits), value);
  out_.append(std::begin(digits), written.ptr);
}

void JsonText::number(double value, int places) {
  before_value();
  fmt::format_to(std::back_inserter(out_), "{:.{}f}", value, places);
}

void JsonText::truth(bool value) {
  before_value();
  out_ += value ? "true" : "false";
}

void JsonText::null() {
  before_value();
  out_ += "null";
}

}  // namespace haunch
