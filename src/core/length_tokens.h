// The characters and words that lengths are written in, for the reader and for what is said when it
// refuses.
#pragma once

#include <cstdint>
#include <optional>
#include <string_view>

namespace haunch {

/// What a token is. The value is the letter that stands for it in the shape of a text ("d d/d w").
enum class TokenKind : char {
  end = '$',
  not_utf8 = '!',
  blank = ' ',  // a run of spaces, no-break spaces (U+00A0) and narrow ones (U+202F)
  digits = 'd',
  point = '.',
  comma = ',',
  slash = '/',  // or the fraction slash U+2044
  hyphen = '-',
  vulgar = 'v',      // one character that is a whole fraction, such as U+00BD
  foot_mark = '\'',  // or U+2032, U+2019
  inch_mark = '"',   // or U+2033, U+201D
  word = 'w',        // a run of Latin letters and the micro sign
  other = '?',       // any other character, by itself
};

struct Token {
  TokenKind kind = TokenKind::end;
  std::string_view text;
  char32_t character = 0;  // the first one of the text
};

/// The token that `text` begins with; TokenKind::end when it is empty. A byte that is no part of
/// valid UTF-8 is a token of its own.
Token first_token(std::string_view text);

/// A number as a ratio of whole numbers, not reduced.
struct Ratio {
  std::int64_t parts = 0;
  std::int64_t of = 1;
};

/// What a vulgar fraction character means, U+00BD: 1/2.
std::optional<Ratio> vulgar_fraction(char32_t character);

/// The steps in one of the unit that a word or mark names, 0 when it names none. Words are in small
/// letters or in capitals throughout, but a metre is a small m.
std::int64_t unit_steps(const Token& token);

/// Whether the unit's word is an abbreviation that may carry a full stop: in. and ft.
bool takes_full_stop(std::string_view unit);

}  // namespace haunch
