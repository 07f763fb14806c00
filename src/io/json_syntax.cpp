#include "json_syntax.h"

#include <fmt/core.h>

#include <algorithm>

#include "encoding.h"
#include "json_reader.h"
#include "utf8.h"

namespace haunch {
namespace {

using Next = ReadingState::Next;

constexpr std::string_view kBlanks = " \t\r\n";
constexpr std::size_t kShownLength = 40;  // of what a message quotes, in bytes

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}
bool is_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '_' || c == '$';
}
bool is_hex(char c) {
  return is_digit(c) || (c >= 'a' && c <= 'f') || (c >= 'A' && c <= 'F');
}

unsigned byte(char c) {
  return static_cast<unsigned char>(c);
}

/// The character at `text[0]` as a message shows it: 'x', or by its number where it may not be
/// seen.
std::string shown(std::string_view text) {
  const Utf8Character character = first_character(text);
  const auto code = static_cast<unsigned>(character.code);
  if (code > 0x20 && code < 0x7F) return fmt::format("'{}'", text[0]);
  if (code == 0x20) return "a space";
  if (code == '\t') return "a tab";
  return fmt::format("the character U+{:04X}", code);
}

/// The word at the start of `text`: letters, digits and what keys are joined with, whole characters
/// only.
std::string_view word_of(std::string_view text) {
  std::size_t end = 0;
  while (end < text.size() && end < kShownLength) {
    const char c = text[end];
    if (byte(c) < 0x80 && !is_letter(c) && !is_digit(c) && c != '-' && c != '.') break;
    const std::size_t size = first_character(text.substr(end)).size;
    if (size == 0) break;
    end += size;
  }
  return text.substr(0, end);
}

/// From `text[0]` to the end of its value, as a hurried hand would see it: a comma, a bracket or
/// the line's end.
std::string_view rough_value(std::string_view text) {
  const std::string_view value = text.substr(0, text.find_first_of(",]}\r\n"));
  return value.substr(0, value.find_last_not_of(kBlanks) + 1);
}

/// The number at the start of `text`, right or not.
std::string_view rough_number(std::string_view text) {
  return text.substr(0, text.find_first_not_of("0123456789+-.eE"));
}

std::string lowered(std::string_view word) {
  std::string result(word);
  for (char& c : result)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  return result;
}

std::string unquoted_value(std::string_view word) {
  const std::string low = lowered(word);
  if (low == "true" || low == "false" || low == "null")
    return fmt::format("{}; JSON writes {}", word, low);
  if (low == "none" || low == "nil" || low == "undefined")
    return fmt::format("{}; JSON writes null", word);
  if (low == "nan" || low == "inf" || low == "infinity" || low == "-inf" || low == "-infinity")
    return fmt::format("{} is no number in JSON; write one in digits", word);
  return fmt::format("the text {0} stands without quotes; write \"{0}\"", word);
}

std::size_t after_digits(std::string_view text, std::size_t from) {
  return std::min(text.find_first_not_of("0123456789", from), text.size());
}

bool is_number(std::string_view text) {
  const std::size_t start = text.starts_with('-') ? 1 : 0;
  std::size_t end = after_digits(text, start);
  bool right = end > start;
  if (right && end < text.size() && text[end] == '.') {
    const std::size_t point = end;
    end = after_digits(text, point + 1);
    right = end > point + 1;
  }
  if (right && end < text.size() && (text[end] == 'e' || text[end] == 'E')) {
    ++end;
    if (end < text.size() && (text[end] == '+' || text[end] == '-')) ++end;
    right = end < text.size();
    end = after_digits(text, end);
  }
  return right && end == text.size();
}

/// What is wrong with a number that begins with a sign, a digit or a point.
std::string wrong_number(std::string_view number) {
  if (number.size() > kShownLength)
    return fmt::format("{}... is no number or too large", number.substr(0, kShownLength));
  if (is_number(number)) return fmt::format("{} is too large a number", number);
  if (number[0] == '+' && is_number(number.substr(1)))
    return fmt::format("{} has a plus sign; write {}", number, number.substr(1));
  if (number[0] == '.' && is_number(number.substr(1)))
    return fmt::format("{0} begins with its point; write 0{0}", number);
  if (number.back() == '.' && is_number(number.substr(0, number.size() - 1)))
    return fmt::format("{} ends with its point; write {}", number,
                       number.substr(0, number.size() - 1));
  return fmt::format("{} is no number; write one such as 70 or 70.5", number);
}

/// `-007` without its idle noughts.
std::string without_noughts(std::string_view number) {
  std::string result;
  if (number.starts_with('-')) result += '-';
  number.remove_prefix(result.size());
  while (number.size() > 1 && number[0] == '0' && is_digit(number[1]))
    number.remove_prefix(1);
  return result.append(number);
}

/// Walks from the state's cursor to the first fault, by the grammar, and words it.
class Explainer {
 public:
  Explainer(std::string_view text, const ReadingState& state)
      : text_(text), state_(state), at_(state.cursor) {}

  SyntaxFault explain() {
    skip_blanks();
    switch (state_.next) {
      case Next::document:
        return document();
      case Next::first_element:
        return peek() == ',' ? fault("a comma before the first value; leave it out") : value();
      case Next::first_key:
        return peek() == ',' ? fault("a comma before the first key; leave it out") : key();
      case Next::colon:
        return after_key();
      case Next::comma:
        return after_value();
      case Next::nothing:
        break;
    }
    return after_end();
  }

 private:
  using Of = SyntaxFault::Of;

  bool ended() const { return at_ >= text_.size(); }
  char peek() const { return ended() ? '\0' : text_[at_]; }
  std::string_view rest() const { return text_.substr(at_); }
  bool in_object() const { return state_.opener && text_[*state_.opener] == '{'; }
  char closer() const { return in_object() ? '}' : ']'; }
  void skip_blanks() { at_ = after_blanks(text_, at_); }

  SyntaxFault fault(std::string message) const { return {at_, std::move(message)}; }
  SyntaxFault of_value(std::string message) const {
    return {at_, std::move(message), Of::due_value};
  }
  SyntaxFault of_last(std::string message) const {
    return {*state_.last, std::move(message), Of::last_value};
  }

  SyntaxFault instead(std::string_view right) const {
    return fault(fmt::format("{} stands here; {} would be right", shown(rest()), right));
  }

  SyntaxFault end_of_text() const {
    const std::size_t end = text_.find_last_not_of(kBlanks) + 1;
    if (!state_.opener) return {end, "the text ends here; a value is missing"};
    return {end, fmt::format("the text ends here; the '{}' at {} is still open",
                             text_[*state_.opener], place_words(text_, *state_.opener, end))};
  }

  SyntaxFault wrong_closer() const {
    return fault(fmt::format("'{}' stands here, but the '{}' at {} is open; '{}' would be right",
                             peek(), text_[*state_.opener], place_words(text_, *state_.opener, at_),
                             closer()));
  }

  SyntaxFault trailing_comma() const {
    return {comma_, fmt::format("a comma before '{}'; leave it out", closer())};
  }

  /// Faults that may stand anywhere outside a text: its end, comments, foreign quotes, bytes that
  /// are no UTF-8.
  std::optional<SyntaxFault> common() const {
    if (ended()) return end_of_text();
    if (peek() == '#' || rest().starts_with("//") || rest().starts_with("/*"))
      return fault("a comment; JSON has none, leave it out");
    if (peek() == '\'' || peek() == '`') return fault("single quotes; write double quotes");
    const Utf8Character character = first_character(rest());
    if (character.size == 0) return fault(not_utf8(rest()));
    constexpr std::u32string_view kQuotes = U"\u00AB\u00BB\u2018\u2019\u201A\u201C\u201D\u201E";
    if (kQuotes.find(character.code) != std::u32string_view::npos)
      return fault("typographic quotes; write plain double quotes");
    if (character.code == kByteOrderMark) return fault(std::string(kStrayMark));
    constexpr std::u32string_view kSpaces = U"\u00A0\u2007\u2009\u200B\u202F\u3000";
    if (kSpaces.find(character.code) != std::u32string_view::npos)
      return fault(shown(rest()) + " stands here; write a plain space or none");
    return std::nullopt;
  }

  SyntaxFault document() {
    if (auto found = common()) return *found;
    if (auto found = wrong_scalar()) return *found;
    return instead("'{'");
  }

  /// A text or number that cannot be read.
  std::optional<SyntaxFault> wrong_scalar() const {
    if (peek() == '"') return inside_text(Of::due_value);
    const bool number = is_digit(peek()) || peek() == '+' || peek() == '.' || peek() == '-';
    if (!number || (at_ + 1 < text_.size() && is_letter(text_[at_ + 1]) && !is_digit(peek())))
      return std::nullopt;
    return of_value(wrong_number(rough_number(rest())));
  }

  SyntaxFault value() {
    if (auto found = common()) return *found;
    if (auto found = wrong_scalar()) return *found;
    const std::string_view word = word_of(rest());
    if (!word.empty()) return of_value(unquoted_value(word));
    if ((peek() == '}' || peek() == ']') && peek() != closer()) return wrong_closer();
    return instead("a value");
  }

  SyntaxFault key() {
    if (auto found = common()) return *found;
    if (peek() == '"') return inside_text(Of::container);
    if (peek() == ']') return wrong_closer();
    const std::string_view word = word_of(rest());
    if (!word.empty())
      return fault(fmt::format("the key {0} stands without quotes; write \"{0}\"", word));
    return instead("a key in double quotes");
  }

  SyntaxFault after_key() {
    if (peek() == ':') {
      ++at_;
      skip_blanks();
      if (peek() == ':') return fault("two colons in a row; one is enough");
      if (peek() == ',' || peek() == '}')
        return of_value("the key has no value; write one after the colon");
      return value();
    }
    if (auto found = common()) return *found;
    if (peek() == ',' || peek() == '}')
      return of_value("the key has no value; write a colon and the value");
    if (touches_text()) return fault(quote_within());
    return instead("':'");
  }

  SyntaxFault after_value() {
    if (peek() == ',') return after_comma();
    if (auto found = after_number()) return *found;
    if (auto found = common()) return *found;
    const char c = peek();
    if (c == '}' || c == ']') return wrong_closer();
    if (touches_text()) return fault(quote_within());
    if (c == '"' || (!in_object() && (c == '{' || c == '[' || c == '-' || is_digit(c))))
      return fault(fmt::format("a comma is missing before {}", shown(rest())));
    return instead(in_object() ? "',' or '}'" : "',' or ']'");
  }

  SyntaxFault after_comma() {
    comma_ = at_++;
    skip_blanks();
    if (peek() == closer()) return trailing_comma();
    if (peek() == ',') return fault("two commas in a row; one is enough");
    if (!in_object()) return value();
    if (decimal_comma()) return written_with_comma();
    return key();
  }

  SyntaxFault after_end() {
    if (peek() == '}' || peek() == ']')
      return fault(fmt::format("'{}' closes nothing; leave it out", peek()));
    if (auto found = common()) return *found;
    return fault(
        fmt::format("{} stands after the end; several items stand in a list [ ] or one on a line",
                    shown(rest())));
  }

  /// A letter, digit or quote right behind a text: the text held a quote, which ended it.
  bool touches_text() const {
    return text_[at_ - 1] == '"' && (peek() == '"' || is_letter(peek()) || is_digit(peek()));
  }
  static std::string quote_within() {
    return "the text ended before this; a quote within a text is written \\\"";
  }

  bool last_is_number() const {
    return state_.last && (is_digit(text_[*state_.last]) || text_[*state_.last] == '-');
  }

  /// `70,5` in an object: the comma ends the value, and digits follow where a key is due.
  bool decimal_comma() const {
    return last_is_number() && comma_ == state_.cursor && at_ == comma_ + 1 && is_digit(peek()) &&
           comma_ - *state_.last <= kShownLength;
  }

  SyntaxFault written_with_comma() const {
    const std::string_view whole = text_.substr(*state_.last, comma_ - *state_.last);
    const std::string_view decimals =
        rest().substr(0, std::min(after_digits(rest(), 0), kShownLength));
    return of_last(fmt::format("{0},{1} has a decimal comma; write {0}.{1}", whole, decimals));
  }

  /// A number with something behind it that belongs to it: `60 mm`, `2 3/8`, `36"`, `007`.
  std::optional<SyntaxFault> after_number() const {
    if (ended() || !last_is_number()) return std::nullopt;
    std::string_view whole = rough_value(text_.substr(*state_.last));
    const std::size_t before = at_ - *state_.last;
    if (before >= whole.size() || whole.size() > kShownLength)
      return std::nullopt;  // on another line
    const bool touches = at_ == state_.cursor;
    if (touches && is_digit(peek()))
      return of_last(fmt::format("{} begins with 0; write {}", rough_number(whole),
                                 without_noughts(rough_number(whole))));
    if (touches && peek() == '\'')
      return of_last(fmt::format("{} stands without quotes; write it as \"6 ft 8 in\"", whole));
    const bool inches = whole.ends_with('"');
    const std::string_view bare = inches ? whole.substr(0, whole.size() - 1) : whole;
    if (!belongs_to_number(bare.substr(std::min(before, bare.size())), inches && touches))
      return std::nullopt;
    return of_last(
        fmt::format("{} stands without quotes; write \"{}{}\"", whole, bare, inches ? " in" : ""));
  }

  static bool belongs_to_number(std::string_view tail, bool inch_mark_follows) {
    if (tail.empty()) return inch_mark_follows;
    if (tail.starts_with("//") || tail.starts_with("/*")) return false;
    const bool plain =
        tail.find_first_of("\"\\:{[#") == std::string_view::npos &&
        std::all_of(tail.begin(), tail.end(), [](char c) { return c >= ' ' && c < 0x7F; });
    const bool fraction = is_digit(tail[0]) && tail.find('/') != std::string_view::npos;
    return plain && (fraction || is_letter(tail[0]) || tail[0] == '/');
  }

  /// The first fault within the text or key whose opening quote is at `at_`, as a reader meets it.
  SyntaxFault inside_text(Of of) const {
    for (std::size_t i = at_ + 1; i < text_.size();) {
      const char c = text_[i];
      if (c == '\n' || c == '\r')
        return {at_, "the text is not closed on its line; '\"' is missing", of};
      if (byte(c) < 0x20)
        return {i, fmt::format("{} within a text; write {}", shown(text_.substr(i)), escape_of(c)),
                of};
      const std::size_t size = c == '\\' ? escape_size(i) : first_character(text_.substr(i)).size;
      if (size == 0) return {i, c == '\\' ? wrong_escape(i) : not_utf8(text_.substr(i)), of};
      i += size;
    }
    return {at_, "the text is not closed; '\"' is missing", of};
  }

  static std::string escape_of(char control) {
    return control == '\t' ? std::string("\\t") : fmt::format("\\u{:04x}", byte(control));
  }

  /// The value of \uXXXX at `i`, or nothing.
  std::optional<unsigned> unicode_escape(std::size_t i) const {
    if (i + 6 > text_.size() || text_[i] != '\\' || text_[i + 1] != 'u') return std::nullopt;
    unsigned code = 0;
    for (std::size_t k = i + 2; k < i + 6; ++k) {
      const char c = text_[k];
      if (!is_hex(c)) return std::nullopt;
      code = code * 16 + (is_digit(c) ? byte(c) - '0' : (byte(c) | 0x20U) - 'a' + 10);
    }
    return code;
  }

  static bool high_half(unsigned code) { return code >= 0xD800 && code < 0xDC00; }
  static bool low_half(unsigned code) { return code >= 0xDC00 && code < 0xE000; }

  /// Bytes of the escape at `i`, or 0 if it is wrong.
  std::size_t escape_size(std::size_t i) const {
    if (i + 1 >= text_.size()) return 0;
    if (text_[i + 1] != 'u')
      return std::string_view("\"\\/bfnrt").find(text_[i + 1]) != std::string_view::npos ? 2 : 0;
    const std::optional<unsigned> code = unicode_escape(i);
    if (!code || low_half(*code)) return 0;
    if (!high_half(*code)) return 6;
    const std::optional<unsigned> low = unicode_escape(i + 6);
    return low && low_half(*low) ? 12 : 0;
  }

  std::string wrong_escape(std::size_t i) const {
    if (i + 1 >= text_.size()) return "the text ends within an escape";
    if (unicode_escape(i))
      return fmt::format("{} is half a character; both halves are needed", text_.substr(i, 6));
    if (text_[i + 1] == 'u') return "\\u takes four hexadecimal digits";
    return "a backslash alone; within a text it is written \\\\";
  }

  std::string_view text_;
  const ReadingState& state_;
  std::size_t at_;
  std::size_t comma_ = 0;
};

}  // namespace

SyntaxFault explain_syntax(std::string_view text, const ReadingState& state) {
  return Explainer(text, state).explain();
}

std::string place_words(std::string_view text, std::size_t there, std::size_t here) {
  const TextPlace place = place_in(text, there);
  if (place.line == place_in(text, here).line) return fmt::format("column {}", place.column);
  return fmt::format("line {}", place.line);
}

}  // namespace haunch
