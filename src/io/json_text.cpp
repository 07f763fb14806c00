#include "json_text.h"

#include <fmt/core.h>

#include <algorithm>
#include <charconv>
#include <iterator>

#include "shown_text.h"
#include "utf8.h"

namespace haunch {
namespace {

/// What JSON wants escaped, and what a terminal or a page would act on (RFC 8259 lets all be so).
bool needs_escape(Utf8Character character) {
  return character.size == 0 || character.code == '"' || character.code == '\\' ||
         acts_on_screen(character.code);
}

/// A byte that is not UTF-8, as of a file's name, becomes U+FFFD: no JSON could hold it.
void append_escaped(std::string& out, Utf8Character character) {
  switch (character.size == 0 ? 0xFFFD : character.code) {
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
    case 0xFFFD:
      out += "\xEF\xBF\xBD";
      return;
    default:
      out += fmt::format("\\u{:04x}", static_cast<unsigned>(character.code));
  }
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
  // What separates, and the quotation mark, at once: half of all text is keys.
  constexpr std::string_view kBefore[2][2] = {{"\"", "\n  \""}, {", \"", ",\n  \""}};
  out_ += kBefore[comma_ ? 1 : 0][row_ ? 1 : 0];
  out_ += name;
  out_ += "\": ";
  comma_ = row_ = false;
}

void JsonText::text(std::string_view value) {
  before_value();
  out_ += '"';
  std::size_t done = 0;
  for (std::size_t i = 0; (i += plain_bytes(value.substr(i), '"', '\\')) < value.size();) {
    const Utf8Character character = first_character(value.substr(i));
    const std::size_t next = i + std::max<std::size_t>(character.size, 1);
    if (needs_escape(character)) {
      out_ += value.substr(done, i - done);
      append_escaped(out_, character);
      done = next;
    }
    i = next;
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
  out_ += fmt::format("{:.{}f}", value, places);
}

void JsonText::written(std::string_view decimal) {
  before_value();
  out_ += decimal;
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
