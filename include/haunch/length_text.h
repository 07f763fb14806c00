// Lengths in words: reading what a shop writes, and printing what it can cut.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "haunch/length.h"
#include "haunch/trade.h"

namespace haunch {

enum class Unit { mm, inch };

template <>
inline constexpr std::string_view kWords<Unit>[] = {"mm", "in"};

/// What came of reading a text as a length: a length, or why not and what would be right.
struct LengthReading {
  std::optional<Length> length;  // set when the text is a length
  std::string why;               // else: what is wrong, a clause such as "it has a decimal comma"
  std::string instead;  // and, where it can be told, what to write: "70.5 mm"; it reads as a length
};

/// Reads a length as a joiner writes it: `70`, `70.5 mm`, `7 cm`, `4 3/8`, `4-3/8"`, `6'-8 1/2"`,
/// `6 ft 8 in`.
///
/// A text without a unit is in `bare`; a bare fraction is read in inches only. No sign, no
/// exponent, no digit groups, no decimal comma, no sums but feet with inches: what could be read in
/// two ways is refused. Exact, except that a value between two steps (1/3 in) goes to the nearer
/// one, a tie upwards. Up to 6 digits before the point, 9 decimals, 4 digits in each half of a
/// fraction. Text is UTF-8; a number of a JSON document may be given as it stands there.
LengthReading read_length(std::string_view text, Unit bare);

/// The exact decimal in `unit`, as JSON and CSV carry it: no exponent, no trailing zeros ("70.5",
/// "-0.25", "0"). Exact in millimetres; in inches exact where the decimal ends within 9 places,
/// else rounded to 9, from which the nearest step is the length again.
std::string decimal(Length length, Unit unit);
void append_decimal(std::string& out, Length length, Unit unit);

/// A decimal with exactly `places` (0 to 9) decimals, rounded half away from zero; no sign where it
/// shows zero.
struct FixedText {
  std::string text;
  bool exact = true;  // false when the rounding changed the value
};
FixedText fixed_decimal(Length length, Unit unit, int places);

/// The least number of decimals with which the length is exact, or `most` where those do not do.
int exact_places(Length length, Unit unit, int most);

/// Inches as the trade reads them: whole, fraction to 1/`denominator` reduced, and, when it is not
/// zero, what is to be added to give the length: `2 3/8`, `-2 3/8`, `5/16 -0.006`, `0 +0.0012`.
/// The fraction is the nearest, a tie away from zero. What is left over is rounded to 0.0001 in;
/// where that would be nothing, it is shown to 9 places (`1/2 +0.000000025`), so that it is never
/// hidden. `denominator` is a power of two from 1 to 512.
std::string inch_fraction(Length length, int denominator);

/// As inch_fraction, but a small length (under 1/4 in) that is no whole fraction is a fit and reads
/// better as a decimal: `0.006`, not `0 +0.006`.
std::string plain_inches(Length length, int denominator);

/// For a sentence: `118 mm`, `2 3/8 in`, `5/16 -0.006 in`; millimetres to the thousandth.
std::string in_words(Length length, Unit unit);

}  // namespace haunch
