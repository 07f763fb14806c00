#include "length_reader.h"
#include "refusal/rules.h"

namespace haunch::refusal {
namespace {

constexpr std::int64_t kInch = Length::kStepsPerInch;
constexpr std::int64_t kFoot = 12 * kInch;

constexpr const char* kUnitsHere = "mm, cm, m, in or ft";

/// Words for units that are read only in another spelling.
std::string_view spelling_read(std::string_view small) {
  if (one_of(small, {"millimetre", "millimetres", "millimeter", "millimeters", "mms"})) return "mm";
  if (one_of(small, {"centimetre", "centimetres", "centimeter", "centimeters", "cms"})) return "cm";
  if (one_of(small, {"metre", "metres", "meter", "meters"})) return "m";
  if (small == "ins") return "in";
  const Token token = first_token(small);
  return unit_steps(token) != 0 ? small : std::string_view();
}

/// Units that are not read, but can be put in one that is.
struct OtherUnit {
  std::string_view word;
  std::int64_t steps;
  Unit unit;
};

constexpr OtherUnit kOtherUnits[] = {
    {"thou", kInch / 1000, Unit::inch},
    {"yd", 3 * kFoot, Unit::inch},
    {"yard", 3 * kFoot, Unit::inch},
    {"yards", 3 * kFoot, Unit::inch},
    {"µm", Length::kStepsPerMm / 1000, Unit::mm},
    {"μm", Length::kStepsPerMm / 1000, Unit::mm},
    {"um", Length::kStepsPerMm / 1000, Unit::mm},
    {"dm", Length::kStepsPerMm * 100, Unit::mm},
    {"km", Length::kStepsPerMm * 1'000'000, Unit::mm},
};

/// The number before unit `i` with a unit that is read; empty when that does not come out even.
std::string converted(const WrittenLength& written, std::size_t i, const OtherUnit& unit) {
  constexpr std::size_t kMostDecimals = 3;  // so that the number is whole steps of a millimetre
  const bool fine = written.at(1) == '.' && written.word(2).size() > kMostDecimals;
  if (fine || written.shape.find_first_not_of("d. ") < i) return {};
  const auto number = length_written(written.text(0, i) + " mm", Unit::mm);
  std::int64_t scaled = 0;
  if (!number || __builtin_mul_overflow(number->steps(), unit.steps, &scaled)) return {};
  if (scaled % Length::kStepsPerMm != 0) return {};
  const Length length = Length::from_steps(scaled / Length::kStepsPerMm);
  return decimal(length, unit.unit) + ' ' + std::string(word_of(unit.unit)) + written.text(i + 1);
}

/// The end of a unit with what may stand between it and the next number.
std::size_t past_unit(const WrittenLength& written, std::size_t unit) {
  std::size_t i = unit + 1;
  while (written.at(i) == '.' || written.at(i) == ' ' || written.at(i) == '-')
    ++i;
  return i;
}

/// A length that reads by itself, as a part of the text.
struct Part {
  std::string text;
  Length length;
  std::int64_t unit = 0;  // steps
};

Advice feet_and_inches(Length feet, Length inches) {
  Advice advice{"the inches beside feet must be below 12", {}, false};
  if (inches < Length::from_steps(kFoot)) advice.why = "the feet beside inches must be whole";
  const bool thousands = inches >= Length::from_inch_parts(100);  // perhaps meant: 1'250"
  if (!thousands) advice.proposal = inch_fraction(feet + inches, 64) + " in";
  return advice;
}

/// "1 m 20 cm", in millimetres to the thousandth.
Advice metric_sum(const Part& first, const Part& second) {
  Advice advice{"only feet and inches are added up"};
  const Length sum = first.length + second.length;
  const bool plain = sum == nearest_multiple(sum, Length::from_mm_thousandths(1));
  if (plain && first.unit > second.unit) advice.proposal = decimal(sum, Unit::mm) + " mm";
  return advice;
}

bool is_imperial(const Part& part) {
  return part.unit == kInch || part.unit == kFoot;
}

Advice two_parts(const Part& first, const Part& second) {
  if (first.unit == second.unit) {
    if (first.unit == kFoot) return {"it has feet twice"};
    if (first.unit == kInch) return {"it has inches twice"};
    return {"it is two lengths; one is wanted"};
  }
  if (first.unit == kInch && second.unit == kFoot)
    return {"the inches stand before the feet", second.text + ' ' + first.text};
  if (first.unit == kFoot && second.unit == kInch)
    return feet_and_inches(first.length, second.length);
  if (is_imperial(first) || is_imperial(second))
    return {"it mixes inches or feet with metric units"};
  return metric_sum(first, second);
}

/// The part from token `from` to its unit, if it reads as a length.
std::optional<Part> part(const WrittenLength& written, std::size_t from, std::size_t unit) {
  const std::string text = written.text(from, unit + 1);
  const auto length = length_written(text, written.bare);
  if (!length) return {};
  return Part{text, *length, unit_steps(written.tokens[unit])};
}

}  // namespace

Ruling unknown_word(const WrittenLength& written) {
  const std::size_t i = written.find("w");
  if (i == WrittenLength::kNone) return {};
  const std::string_view word = written.word(i);
  const std::string small = small_letters(word);
  const std::string why = quoted(word) + " is not a unit that is read here";
  if (small == "mil" || small == "mils")
    return Advice{"a mil could be a thousandth of an inch or a millimetre; write in or mm"};
  if (word == "M") return Advice{"a metre is a small m", written.with(i, 1, "m")};
  if (const auto spelling = spelling_read(small); !spelling.empty()) {
    const bool mixed = spelling == small;
    return Advice{mixed ? quoted(word) + " mixes small letters and capitals" : why,
                  written.with(i, 1, spelling)};
  }
  for (const OtherUnit& unit : kOtherUnits)
    if (unit.word == small) return Advice{why, converted(written, i, unit)};
  return Advice{quoted(word) + " is not a unit of length; write " + kUnitsHere};
}

/// "mm 70".
Ruling unit_first(const WrittenLength& written) {
  if (written.at(0) != 'u') return {};
  Advice advice{"the unit stands before the number"};
  if (written.at(1) == ' ' && written.find_unit(1) == WrittenLength::kNone)
    advice.proposal = written.text(1) + ' ' + std::string(written.word(0));
  return advice;
}

/// "mm2", "ft2"; not "6ft8".
Ruling area(const WrittenLength& written) {
  const std::size_t i = written.find("ud");
  if (i == WrittenLength::kNone || written.find_unit(i + 1) != WrittenLength::kNone) return {};
  const bool inches =
      unit_steps(written.tokens[i]) == kFoot && !one_of(written.word(i + 1), {"2", "3"});
  if (inches) return {};
  return Advice{quoted(written.text(i, i + 2)) + " is not a unit of length; write " + kUnitsHere};
}

/// "6'8", "6 ft 8 1/2"; "6' 8\" 1/2".
Ruling after_last_unit(const WrittenLength& written) {
  const std::size_t last = written.shape.find_last_of("u'\"");
  if (last == WrittenLength::kNone) return {};
  const std::size_t rest = past_unit(written, last);
  if (written.at(rest) != 'd' && written.at(rest) != 'v' && written.at(rest) != '.') return {};
  if (unit_steps(written.tokens[last]) == kFoot)
    return Advice{"the inches need their mark",
                  written.text() + (written.at(last) == '\'' ? "\"" : " in")};
  if (written.find("/", rest) == WrittenLength::kNone && written.at(rest) != 'v')
    return Advice{"there is a number after the unit"};
  std::string unit = written.at(last) == 'u' ? " " : "";
  unit += written.word(last);
  return Advice{"the fraction stands after its unit",
                written.text(0, last) + ' ' + written.text(rest) + unit};
}

Ruling two_units(const WrittenLength& written) {
  const std::size_t first = written.find_unit();
  if (first == WrittenLength::kNone) return {};
  const std::size_t second = written.find_unit(first + 1);
  if (second == WrittenLength::kNone) return {};
  const std::size_t start = past_unit(written, first);
  const bool same = unit_steps(written.tokens[first]) == unit_steps(written.tokens[second]);
  if (start == second)
    return Advice{"it has two units", same ? written.with(first + 1, second - first, "") : ""};
  const auto one = part(written, 0, first), other = part(written, start, second);
  if (one && other && past_unit(written, second) >= written.tokens.size())
    return two_parts(*one, *other);
  return Advice{"it is more than one length"};
}

Ruling full_stop(const WrittenLength& written) {
  const std::size_t i = written.shape.rfind("u.");
  if (i == WrittenLength::kNone) return {};
  const bool two = written.at(i + 2) == '.';
  return Advice{
      two ? "there are two full stops after the unit" : "there is a full stop after the unit",
      written.with(i + 1, 1, "")};
}

}  // namespace haunch::refusal
