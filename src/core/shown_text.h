// Users' texts, names of files among them, as a screen may show them.
#pragma once

#include <string>
#include <string_view>

namespace haunch {

/// Whether a terminal may act on a character instead of showing it: controls (C0, DEL, C1), what
/// turns the direction of writing (Unicode, UAX 9), separators of lines and paragraphs.
bool acts_on_screen(char32_t code);

/// Whether the newlines of a text are its own lines, or came in with what it quotes; and whether
/// its form feeds begin pages of its own.
enum class Newlines { kept, kept_with_pages, shown };

/// Takes a piece off the front of `text`, which is not empty, as it may be shown: a run of harmless
/// characters as it is, a space for a control of ASCII, U+FFFD for anything else that a terminal
/// may act on and for a byte that is not UTF-8. Allocates nothing.
std::string_view take_shown(std::string_view& text, Newlines newlines);

/// All of `text` so.
std::string shown_text(std::string_view text, Newlines newlines);

}  // namespace haunch
