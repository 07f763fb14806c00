#include "random_length_text.h"

#include <cstdint>
#include <initializer_list>
#include <vector>

namespace haunch::test {
namespace {

std::uint64_t below(std::uint64_t limit, Random& random) {
  return random() % limit;
}

std::string any_of(std::initializer_list<const char*> choices, Random& random) {
  return *(choices.begin() + below(choices.size(), random));
}

std::string whole(Random& random, std::uint64_t most_digits = 6) {
  std::uint64_t limit = 10;
  for (std::uint64_t digits = 1 + below(most_digits, random); digits > 1; --digits)
    limit *= 10;
  return std::to_string(below(limit, random));
}

std::string decimals(Random& random) {
  std::string text = ".";
  for (std::uint64_t digits = 1 + below(9, random); digits > 0; --digits)
    text += static_cast<char>('0' + below(10, random));
  return text;
}

std::string fraction(Random& random) {
  const bool power_of_two = below(2, random) == 0;
  const std::uint64_t under = power_of_two ? 2ULL << below(10, random) : 2 + below(9998, random);
  return std::to_string(1 + below(under - 1, random)) + any_of({"/", "/", "/", "⁄"}, random) +
         std::to_string(under);
}

std::string vulgar(Random& random) {
  return any_of(
      {"¼", "½", "¾", "⅓", "⅔", "⅕", "⅖", "⅗", "⅘", "⅙", "⅚", "⅛", "⅜", "⅝", "⅞", "⅐", "⅑", "⅒"},
      random);
}

std::string blanks(Random& random) {
  return any_of({" ", " ", " ", "  ", "\u00A0", "\u202F"}, random);
}

std::string gap(Random& random) {
  return below(2, random) == 0 ? "" : blanks(random);
}

/// What may join a number to its fraction.
std::string joint(Random& random) {
  return below(3, random) == 0 ? "-" : blanks(random);
}

/// A number whose whole part is `start`.
std::string number(const std::string& start, Random& random) {
  switch (below(8, random)) {
    case 0:
      return start + decimals(random);
    case 1:
      return decimals(random);
    case 2:
      return fraction(random);
    case 3:
      return vulgar(random);
    case 4:
      return start + joint(random) + fraction(random);
    case 5:
      return start + joint(random) + vulgar(random);
    case 6:
      return start + vulgar(random);
    default:
      return start;
  }
}

std::string inch_unit(Random& random) {
  return any_of(
      {"\"", "\"", "″", "”", "in", "in.", "IN", "IN.", "inch", "INCH", "inches", "INCHES"}, random);
}

std::string foot_mark(Random& random) {
  return any_of({"'", "'", "′", "’"}, random);
}

std::string foot_word(Random& random) {
  return any_of({"ft", "FT", "foot", "FOOT", "feet", "FEET"}, random);
}

std::string unit(Random& random) {
  switch (below(4, random)) {
    case 0:
      return inch_unit(random);
    case 1:
      return foot_mark(random);
    case 2:
      return foot_word(random);
    default:
      return any_of({"mm", "mm", "MM", "cm", "CM", "m", "ft.", "FT."}, random);
  }
}

std::string feet_and_inches(Random& random) {
  const std::string inches =
      number(std::to_string(below(12, random)), random) + gap(random) + inch_unit(random);
  const std::string feet = whole(random, 3) + gap(random);
  switch (below(4, random)) {
    case 0:
      return feet + foot_mark(random) + "-" + inches;
    case 1:
      return feet + foot_mark(random) + gap(random) + inches;
    case 2:
      return feet + any_of({"ft. ", "FT. ", "ft.\u00A0"}, random) + inches;
    default: {
      const bool point = inches[0] == '.';  // it would read as the full stop of the word
      return feet + foot_word(random) + (point ? blanks(random) : gap(random)) + inches;
    }
  }
}

/// Where characters begin.
std::vector<std::size_t> starts_of_characters(const std::string& text) {
  std::vector<std::size_t> starts;
  for (std::size_t i = 0; i < text.size(); ++i)
    if ((static_cast<unsigned char>(text[i]) & 0xC0U) != 0x80) starts.push_back(i);
  starts.push_back(text.size());
  return starts;
}

std::string troublesome(Random& random) {
  return any_of({"0",  "1", "12", "9",      ".",      ",",      "/",    "⁄",    "∕",  "-", "–",
                 "−",  " ", " ",  "\u00A0", "\u2009", "\t",     "'",    "''",   "\"", "″", "”",
                 "“",  "½", "⅜",  "⅟",      "in",     "in.",    "ft",   "ft.",  "mm", "m", "M",
                 "e3", "+", "x",  "µ",      "７",     "\u200B", "\xC2", "\xFF", "{",  "}", "{1/2}"},
                random);
}

std::string edited_once(const std::string& text, Random& random) {
  const auto starts = starts_of_characters(text);
  const std::size_t at = below(starts.size(), random);
  const std::size_t start = starts[at], end = at + 1 < starts.size() ? starts[at + 1] : start;
  const std::string before = text.substr(0, start), character = text.substr(start, end - start),
                    after = text.substr(end);
  switch (below(4, random)) {
    case 0:
      return before + after;
    case 1:
      return before + troublesome(random) + character + after;
    case 2:
      return before + troublesome(random) + after;
    default:
      return before + character + character + after;
  }
}

}  // namespace

std::string random_length_text(Random& random) {
  const std::string before = below(8, random) == 0 ? blanks(random) : "";
  const std::string after = below(8, random) == 0 ? blanks(random) : "";
  switch (below(4, random)) {
    case 0:
      return before + number(whole(random), random) + after;
    case 1:
      return before + feet_and_inches(random) + after;
    default:
      return before + number(whole(random), random) + gap(random) + unit(random) + after;
  }
}

std::string edited(std::string text, Random& random) {
  for (std::uint64_t edits = 1 + below(3, random); edits > 0; --edits)
    text = edited_once(text, random);
  return text;
}

}  // namespace haunch::test
