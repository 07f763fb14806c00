#include "length_reader.h"
#include "refusal/rules.h"

namespace haunch::refusal {
namespace {

/// A shape that no length has: what is wrong with it, and what to put for `count` tokens from the
/// `at`th of it.
struct WrongShape {
  std::string_view shape;
  std::string_view why;
  std::size_t at = 0, count = 0;
  std::string_view instead = {};
};

constexpr const char* kFractionSpace = "there is a space inside a fraction";
constexpr const char* kFractionDecimal = "there is a decimal inside a fraction";
constexpr const char* kDecimalFraction = "a decimal is followed by a fraction";
constexpr const char* kTwoFractions = "there are two fractions in it";
constexpr const char* kWholeLast = "the fraction stands before the whole number";
constexpr const char* kTwoFootMarks = "two foot marks are not an inch mark";
constexpr const char* kHyphenSpace = "there is a space after the hyphen";
constexpr const char* kMinus =
    "a hyphen after a space reads as a minus; leave the space out to join";
constexpr const char* kSpacedHyphen =
    "a hyphen between spaces could join or subtract; leave the spaces out to join";
constexpr const char* kWordHyphen = "a hyphen after a unit in words reads as a minus";
constexpr const char* kUnitHyphen = "there is a hyphen before the unit";
constexpr const char* kNoDecimals = "there is no digit after the point";

constexpr WrongShape kWrongShapes[] = {
    {"''", kTwoFootMarks, 0, 2, "\""},
    {"d /", kFractionSpace, 1, 1, ""},
    {"/ d", kFractionSpace, 1, 1, ""},
    {"d/d/d", "there are two slashes in a fraction"},
    {"d.d.d", "there are two points in a number"},
    {".d/", kFractionDecimal},
    {"/d.d", kFractionDecimal},
    {"/.d", kFractionDecimal},
    {".d d/", kDecimalFraction},
    {".d-d/", kDecimalFraction},
    {".d v", kDecimalFraction},
    {".d-v", kDecimalFraction},
    {".dv", kDecimalFraction},
    {"v v", kTwoFractions},
    {"vv", kTwoFractions},
    {"v d/", kTwoFractions},
    {"vd/", kTwoFractions},
    {"/d d/", kTwoFractions},
    {"/d v", kTwoFractions},
    {"/dv", kTwoFractions},
    {"v d", kWholeLast},
    {"vd", kWholeLast},
    {"/d d", kWholeLast},
    {"d.u", kNoDecimals, 1, 1, ""},
    {"d. u", kNoDecimals, 1, 1, ""},
    {"d.'", kNoDecimals, 1, 1, ""},
    {"d. '", kNoDecimals, 1, 1, ""},
    {"d.\"", kNoDecimals, 1, 1, ""},
    {"d. \"", kNoDecimals, 1, 1, ""},
    {"--", "there are two hyphens in a row"},
    {"u - ", "a hyphen between spaces could join or subtract; leave it out to join"},
    {" - ", kSpacedHyphen},
    {"d- d", kHyphenSpace, 2, 1, ""},
    {"'- d", kHyphenSpace, 2, 1, ""},
    {"d- v", kHyphenSpace, 2, 1, ""},
    {"'- v", kHyphenSpace, 2, 1, ""},
    {" -", kMinus},
    {"d-u", kUnitHyphen, 1, 1, " "},
    {"v-u", kUnitHyphen, 1, 1, " "},
    {"d-'", kUnitHyphen, 1, 1, ""},
    {"d-\"", kUnitHyphen, 1, 1, ""},
    {"u-d", kWordHyphen, 1, 1, " "},
    {"u-v", kWordHyphen, 1, 1, " "},
    {"u.-", kWordHyphen, 2, 1, " "},
    {"u.d", "the full stop could end the unit or begin a decimal"},
};

}  // namespace

Ruling wrong_shape(const WrittenLength& written) {
  for (const WrongShape& wrong : kWrongShapes) {
    const std::size_t start = written.find(wrong.shape);
    if (start == WrittenLength::kNone) continue;
    Advice advice{std::string(wrong.why)};
    if (wrong.count > 0)
      advice.proposal = written.with(start + wrong.at, wrong.count, wrong.instead);
    return advice;
  }
  return {};
}

Ruling no_decimals(const WrittenLength& written) {
  if (written.at(0) == '.' && written.at(1) != 'd') return Advice{kNoDecimals};
  const std::size_t last = written.shape.size() - 1;
  if (written.at(last) != '.' || written.at(last - 1) != 'd') return {};
  return Advice{kNoDecimals, written.text(0, last)};
}

/// "2-3 in", "6-8".
Ruling hyphenated_numbers(const WrittenLength& written) {
  const std::size_t start = written.find("d-d");
  if (start == WrittenLength::kNone || written.at(start + 3) == '/') return {};
  const std::string feet =
      std::string(written.word(start)) + " ft " + std::string(written.word(start + 2)) + " in";
  const bool as_feet = written.at(start + 3) != '-' && length_written(feet, written.bare);
  return Advice{"it could be " + (as_feet ? feet + ", " : "") + "a range or a subtraction"};
}

}  // namespace haunch::refusal
