#include "shown_text.h"

#include "utf8.h"

namespace haunch {
namespace {

constexpr std::string_view kReplacement = "\xEF\xBF\xBD";  // U+FFFD

bool is_within(char32_t code, char32_t first, char32_t last) {
  return code >= first && code <= last;
}

bool is_harmless(Utf8Character character, Newlines newlines) {
  if (character.size == 0) return false;
  return !acts_on_screen(character.code) ||
         (character.code == '\n' && newlines != Newlines::shown) ||
         (character.code == '\f' && newlines == Newlines::kept_with_pages);
}

}  // namespace

bool acts_on_screen(char32_t code) {
  return code < 0x20 || is_within(code, 0x7F, 0x9F)            // C0; DEL and C1
         || code == 0x061C || is_within(code, 0x200E, 0x200F)  // marks of direction
         || is_within(code, 0x2028, 0x202E)   // separators, embeddings and overrides
         || is_within(code, 0x2066, 0x206F);  // isolates, and formats no longer in use
}

std::string_view take_shown(std::string_view& text, Newlines newlines) {
  std::size_t size = 0;
  Utf8Character next;
  while ((size += plain_bytes(text.substr(size))) < text.size()) {
    next = first_character(text.substr(size));
    if (!is_harmless(next, newlines)) break;
    size += next.size;
  }
  const std::string_view whole = text.substr(0, size);
  if (size == 0) size = next.size == 0 ? 1 : next.size;
  text.remove_prefix(size);
  if (!whole.empty()) return whole;
  return next.size == 1 ? " " : kReplacement;
}

std::string shown_text(std::string_view text, Newlines newlines) {
  std::string shown;
  shown.reserve(text.size());
  while (!text.empty())
    shown += take_shown(text, newlines);
  return shown;
}

}  // namespace haunch
