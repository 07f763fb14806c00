#include "shown_text.h"

#include <string>

#include "catch.h"
#include "utf8.h"

using haunch::acts_on_screen;
using haunch::Newlines;
using haunch::shown_text;

namespace {

std::string line(std::string_view text) {
  return shown_text(text, Newlines::shown);
}

/// A code point up to U+FFFF in UTF-8.
std::string character(unsigned code) {
  if (code < 0x80) return {static_cast<char>(code)};
  if (code < 0x800)
    return {static_cast<char>(0xC0U | code >> 6U), static_cast<char>(0x80U | (code & 0x3FU))};
  return {static_cast<char>(0xE0U | code >> 12U), static_cast<char>(0x80U | (code >> 6U & 0x3FU)),
          static_cast<char>(0x80U | (code & 0x3FU))};
}

}  // namespace

TEST_CASE("what a joiner writes is shown as it is", "[shown_text]") {
  for (const char* text : {"", "side-door", "Türe zur Mühle", "44 × 118, 3⁄8″, ±0.5 °C …", "門 🚪"})
    CHECK(line(text) == text);
}

TEST_CASE("a control of ASCII is a space; a page keeps its own lines", "[shown_text]") {
  CHECK(line("a\x1b[31mb\tc\nd\x7f") == "a [31mb c d ");
  CHECK(shown_text("a\nb\r\n", Newlines::kept) == "a\nb \n");
  CHECK(line(std::string_view("a\0b", 3)) == "a b");
}

TEST_CASE("what turns writing or ends lines is U+FFFD", "[shown_text]") {
  const std::string instead =
      "a\xEF\xBF\xBD"
      "b";
  for (unsigned code = 0x80; code <= 0xFFFF; ++code) {
    if (code >= 0xD800 && code < 0xE000) continue;
    const bool acts = (code <= 0x9F) || code == 0x061C || code == 0x200E || code == 0x200F ||
                      (code >= 0x2028 && code <= 0x202E) || (code >= 0x2066 && code <= 0x206F);
    const std::string text = "a" + character(code) + "b";
    if (acts_on_screen(code) == acts && line(text) == (acts ? instead : text)) continue;
    CAPTURE(code, line(text));
    FAIL_CHECK("not as it should be");
  }
}

TEST_CASE("bytes that are not UTF-8 are U+FFFD each", "[shown_text]") {
  const std::string instead = "\xEF\xBF\xBD";
  CHECK(line("a\xff") == "a" + instead);
  CHECK(line("\x9b"
             "2J") == instead + "2J");  // C1 as a terminal that is not set to UTF-8 reads it
  CHECK(line("\xc3") == instead);
  CHECK(line("\xe2\x80") == instead + instead);                // cut off
  CHECK(line("\xc0\x9b") == instead + instead);                // ESC and such, overlong
  CHECK(line("\xed\xa0\x80") == instead + instead + instead);  // a surrogate
  CHECK(line("\xf4\x90\x80\x80") == instead + instead + instead + instead);  // past the last
}

TEST_CASE("pieces come off the front until nothing is left", "[shown_text]") {
  std::string_view left =
      "ab\x1b"
      "c";
  CHECK(haunch::take_shown(left, Newlines::shown) == "ab");
  CHECK(haunch::take_shown(left, Newlines::shown) == " ");
  CHECK(haunch::take_shown(left, Newlines::shown) == "c");
  CHECK(left.empty());
}

TEST_CASE("form feeds are kept between pages only", "[shown_text]") {
  CHECK(haunch::shown_text("a\f\x1B[1mb\n", Newlines::kept_with_pages) == "a\f [1mb\n");
  CHECK(haunch::shown_text("a\fb", Newlines::kept) == "a b");
}

TEST_CASE("plain bytes end at the first that is not printed, wherever it stands", "[shown_text]") {
  for (std::size_t at = 0; at < 20; ++at)
    for (int byte = 0; byte < 256; ++byte) {
      std::string text(20, '~');
      text[at] = static_cast<char>(byte);
      const bool is_printed = byte >= ' ' && byte <= '~';
      CAPTURE(at, byte);
      CHECK(haunch::plain_bytes(text) == (is_printed ? text.size() : at));
      CHECK(haunch::plain_bytes(text, '"', '\\') ==
            (is_printed && byte != '"' && byte != '\\' ? text.size() : at));
    }
}
