#include "length_reader.h"
#include "refusal/rules.h"

namespace haunch::refusal {
namespace {

bool is_month(std::string_view word) {
  return one_of(small_letters(word), {"jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep",
                                      "sept", "oct", "nov", "dec"});
}

}  // namespace

Ruling sign(const WrittenLength& written) {
  const char32_t first = written.tokens[0].character;
  const bool minus = first == '-' || first == 0x2212 || (first >= 0x2012 && first <= 0x2015);
  const char next = written.at(written.at(1) == ' ' ? 2 : 1);
  if ((!minus && first != '+') || (next != 'd' && next != 'v' && next != '.')) return {};
  if (!minus) return Advice{"a length has no sign", written.text(1)};
  const std::string unsigned_text = written.text(1);
  const bool zero = length_written(unsigned_text, written.bare) == Length();
  return Advice{"a length has no sign; it is never below 0", zero ? unsigned_text : ""};
}

Ruling no_number(const WrittenLength& written) {
  if (written.shape.find_first_of("dv") != WrittenLength::kNone) return {};
  if (written.shape.find_first_not_of("-+w?") == WrittenLength::kNone)
    for (const Token& token : written.tokens)
      if (one_of(small_letters(token.text), {"nan", "inf", "infinity", "null", "true", "false"}))
        return Advice{quoted(token.text) + " is not a number"};
  if (written.find_unit() != WrittenLength::kNone &&
      written.shape.find_first_not_of("u'\"") == WrittenLength::kNone)
    return Advice{std::string("it has a unit but no number; ") + kExamples};
  return Advice{std::string("there is no number in it; ") + kExamples};
}

/// "2-Jan", "2024-01-02", "1/2/2024".
Ruling a_date(const WrittenLength& written) {
  const Advice date{"it is a date, as spreadsheets make of fractions; write the fraction again"};
  for (const std::string_view shape : {"d-w", "w-d", "d-d-d", "d/d/d"}) {
    if (written.shape.substr(0, shape.size()) != shape) continue;
    const std::string_view first = written.word(0), last = written.word(shape.size() - 1);
    const bool year = first.size() == 4 || last.size() == 4;
    if (is_month(first) || is_month(last) || (shape.size() == 5 && year)) return date;
  }
  return {};
}

Ruling something_before(const WrittenLength& written) {
  const std::string_view first = written.word(0);
  const std::string rest = written.text(1);
  if (first == "=") return Advice{"it begins like a spreadsheet formula", rest};
  if (one_of(first, {"~", "≈"}) || one_of(small_letters(first), {"about", "approx", "ca", "circa"}))
    return Advice{"a length is exact, not " + quoted(first), rest};
  const std::size_t last = written.tokens.size() - 1;
  if (written.at(0) == written.at(last) && (written.at(0) == '"' || written.at(0) == '\''))
    return Advice{"there are quotation marks around it", written.text(1, last)};
  if (written.at(0) == '\'') return Advice{"there is an apostrophe before it", rest};
  return {};
}

/// A second size, a range, a tolerance, a sum.
Ruling more_than_one(const WrittenLength& written) {
  if (written.find("d..d") != WrittenLength::kNone)
    return Advice{"it is a range; one length is wanted"};
  for (std::size_t i = 1; i < written.tokens.size(); ++i) {
    const std::string word = small_letters(written.word(i));
    if (one_of(word, {"x", "by", "×"})) return Advice{"it is two sizes; one length is wanted"};
    if (one_of(word, {"to", "…"})) return Advice{"it is a range; one length is wanted"};
    if (word == "±") return Advice{"a length has no tolerance"};
    if (one_of(word, {"and", "&"}))
      return Advice{quoted(word) + " has no place in a length", written.with(i, 1, " ")};
    if (word == "+")
      return Advice{"there is no reckoning in a length", written.with(i, 1, " "), false};
    if (one_of(word, {"*", "=", "−"})) return Advice{"there is no reckoning in a length"};
  }
  return {};
}

Advice anything_else() {
  return {std::string("it does not read as one length; ") + kExamples};
}

}  // namespace haunch::refusal
