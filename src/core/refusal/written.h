// A text that is not a length, as the rules that look for its fault see it.
#pragma once

#include <initializer_list>
#include <string>
#include <string_view>
#include <vector>

#include "haunch/length_text.h"
#include "length_tokens.h"

namespace haunch {

/// A text in tokens, without the blanks around it. Its shape is a letter for each token
/// (TokenKind), with 'u' for a word that is a unit: "4 3/8 inches" has the shape "d d/d u".
class WrittenLength {
 public:
  static constexpr std::size_t kNone = std::string::npos;

  WrittenLength(std::string_view text, Unit bare_unit);

  /// What kind of token is at `i`, as in the shape; '$' beyond either end.
  char at(std::size_t i) const { return i < shape.size() ? shape[i] : '$'; }

  std::string_view word(std::size_t i) const {
    return i < tokens.size() ? tokens[i].text : std::string_view();
  }

  std::size_t find(std::string_view part, std::size_t from = 0) const {
    return shape.find(part, from);
  }

  /// The first unit word or mark at or after `from`.
  std::size_t find_unit(std::size_t from = 0) const { return shape.find_first_of("u'\"", from); }

  /// The tokens from `from` up to `to`, each run of blanks as one space.
  std::string text(std::size_t from = 0, std::size_t to = kNone) const;

  /// The text with `instead` in place of `count` tokens.
  std::string with(std::size_t first, std::size_t count, std::string_view instead) const;

  std::vector<Token> tokens;
  std::string shape;
  Unit bare;   // the unit of a number without one
  bool empty;  // not even blanks
};

bool one_of(std::string_view word, std::initializer_list<std::string_view> words);

std::string small_letters(std::string_view word);

/// A word as it is shown in a sentence: never long.
std::string quoted(std::string_view word);

}  // namespace haunch
