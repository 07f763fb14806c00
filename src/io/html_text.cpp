#include "html_text.h"

#include <algorithm>

#include "svg_text.h"
#include "utf8.h"

namespace haunch {
namespace {

struct CodeRange {
  char32_t first, last;
};

/// Scripts that are written from right to left (Unicode 15, blocks of UAX 9's classes R and AL).
constexpr CodeRange kLeftwards[] = {
    {0x0590, 0x08FF}, {0xFB1D, 0xFDFF}, {0xFE70, 0xFEFF}, {0x10800, 0x10FFF}, {0x1E800, 0x1EFFF}};

bool runs_leftwards(char32_t code) {
  return std::any_of(std::begin(kLeftwards), std::end(kLeftwards), [code](const CodeRange& range) {
    return code >= range.first && code <= range.last;
  });
}

/// Where the words end that run leftwards from the beginning of `text` on; 0 where none do. Blanks
/// between two of them are theirs.
std::size_t leftward_words(std::string_view text) {
  std::size_t end = 0;
  for (std::size_t at = 0; at < text.size();) {
    const Utf8Character next = first_character(text.substr(at));
    const bool is_blank = at > 0 && text[at] == ' ';
    if (!is_blank && (next.size == 0 || !runs_leftwards(next.code))) break;
    at += next.size;
    if (!is_blank) end = at;
  }
  return end;
}

}  // namespace

std::string html_text(std::string_view text) {
  std::string html;
  std::size_t plain = 0;  // how much of the text stands before those words
  while (plain < text.size()) {
    if (const std::size_t words = leftward_words(text.substr(plain)); words > 0) {
      html += xml_text(text.substr(0, plain)) + "<bdi>" + xml_text(text.substr(plain, words)) +
              "</bdi>";
      text.remove_prefix(plain + words);
      plain = 0;
    } else {
      plain += std::max<std::size_t>(1, plain_bytes(text.substr(plain)));
    }
  }
  return html + xml_text(text);
}

}  // namespace haunch
