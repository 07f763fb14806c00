#include <algorithm>
#include <vector>

#include "length_reader.h"
#include "refusal/rules.h"

namespace haunch::refusal {
namespace {

constexpr std::size_t kMostPowerDigits = 3;

struct Decimal {
  std::size_t first = 0;  // its first token
  std::string whole, decimals;
};

/// The number whose last digits stand before token `end`.
Decimal decimal_before(const WrittenLength& written, std::size_t end) {
  const std::string digits(written.word(end - 1));
  if (written.at(end - 2) != '.') return {end - 1, digits, {}};
  if (written.at(end - 3) != 'd') return {end - 2, {}, digits};
  return {end - 3, std::string(written.word(end - 3)), digits};
}

/// The number with its point moved `places` to the right, without needless zeros; empty when that
/// is far.
std::string with_point_moved(const Decimal& decimal, int places) {
  constexpr int kFarthest = 16;
  if (places < -kFarthest || places > kFarthest) return {};
  const std::string zeros(kFarthest + 1, '0');
  const std::string digits = zeros + decimal.whole + decimal.decimals + zeros;
  const auto point = static_cast<std::size_t>(kFarthest + 1 + places) + decimal.whole.size();
  const std::size_t first = std::min(digits.find_first_not_of('0'), point - 1);
  const std::size_t last = std::max(digits.find_last_not_of('0') + 1, point);
  std::string moved = digits.substr(first, point - first);
  if (last > point) moved += '.' + digits.substr(point, last - point);
  return moved;
}

constexpr const char* kThousands = "a number has no thousands marks here";

/// A number with commas in it, such as "1,250.5".
struct CommaNumber {
  std::size_t first = 0, end = 0;        // its tokens
  std::vector<std::size_t> group_sizes;  // digits before, between and after its points and commas
  std::string marks;                     // those points and commas
};

CommaNumber comma_number(const WrittenLength& written, std::size_t comma) {
  CommaNumber number;
  number.first = number.end = comma;
  const auto belongs = [&](std::size_t i) {
    return written.at(i) == 'd' || written.at(i) == '.' || written.at(i) == ',';
  };
  while (number.first > 0 && belongs(number.first - 1))
    --number.first;
  number.group_sizes.push_back(0);
  for (number.end = number.first; belongs(number.end); ++number.end) {
    if (written.at(number.end) == 'd') {
      number.group_sizes.back() = written.word(number.end).size();
    } else {
      number.marks += written.at(number.end);
      number.group_sizes.push_back(0);
    }
  }
  return number;
}

/// Whether the first `count` marks of the number may part thousands.
bool groups_of_three(const CommaNumber& number, std::size_t count) {
  if (number.group_sizes[0] < 1 || number.group_sizes[0] > 3) return false;
  for (std::size_t i = 1; i <= count; ++i)
    if (number.group_sizes[i] != 3) return false;
  return true;
}

std::string without(std::string text, char mark) {
  text.erase(std::remove(text.begin(), text.end(), mark), text.end());
  return text;
}

std::string with_point_for_comma(std::string text) {
  std::replace(text.begin(), text.end(), ',', '.');
  return text[0] == '.' ? '0' + text : text;
}

std::string with_number(const WrittenLength& written, const CommaNumber& number,
                        const std::string& instead) {
  return written.with(number.first, number.end - number.first, instead);
}

Advice one_comma(const WrittenLength& written, const CommaNumber& number, const std::string& text) {
  const std::string decimal = with_number(written, number, with_point_for_comma(text));
  if (!groups_of_three(number, 1) || text[0] == '0') return {"it has a decimal comma", decimal};
  const std::string thousands = with_number(written, number, without(text, ','));
  const std::string why = "a comma could be a decimal point or a thousands mark";
  const bool both =
      length_written(decimal, written.bare) && length_written(thousands, written.bare);
  return {both ? why + "; write " + decimal + " or " + thousands : why};
}

/// Whether a fraction's slash stands after token `i`.
bool slash_follows(const WrittenLength& written, std::size_t i) {
  return written.at(i + 1) == '/' || (written.at(i + 1) == ' ' && written.at(i + 2) == '/');
}

}  // namespace

Ruling hexadecimal(const WrittenLength& written) {
  const bool hexadecimal =
      written.find("dw") == 0 && written.word(0) == "0" && small_letters(written.word(1))[0] == 'x';
  if (!hexadecimal) return {};
  return Advice{"a hexadecimal number is not read; write it in tens"};
}

/// "1e3", "2.5E-1 mm".
Ruling exponent(const WrittenLength& written) {
  const std::size_t e = written.find("dw") + 1;
  if (e == 0 || small_letters(written.word(e)) != "e") return {};
  const bool minus = written.word(e + 1) == "-";
  const std::size_t power = e + (minus || written.word(e + 1) == "+" ? 2 : 1);
  if (written.at(power) != 'd') return {};
  Advice advice{"a number has no exponent here"};
  if (written.word(power).size() > kMostPowerDigits || written.at(power + 1) == '.') return advice;
  const int places = std::stoi(std::string(written.word(power))) * (minus ? -1 : 1);
  const Decimal decimal = decimal_before(written, e);
  const std::string moved = with_point_moved(decimal, places);
  if (!moved.empty())
    advice.proposal = written.with(decimal.first, power + 1 - decimal.first, moved);
  return advice;
}

Ruling comma(const WrittenLength& written) {
  const std::size_t comma = written.find(",");
  if (comma == WrittenLength::kNone) return {};
  const CommaNumber number = comma_number(written, comma);
  if (number.group_sizes.back() == 0) {
    const bool list =
        written.at(comma - 1) == 'd' && written.find("d", comma) != WrittenLength::kNone;
    return Advice{"a comma has no place there", list ? "" : written.with(comma, 1, "")};
  }
  const std::string text = written.text(number.first, number.end);
  if (number.marks == ",") return one_comma(written, number, text);
  const std::size_t last = number.marks.size() - 1;  // also: how many marks stand before the last
  const std::string commas(last, ','), points(last, '.');
  if ((number.marks == commas + ',' && groups_of_three(number, last + 1)) ||
      (number.marks == commas + '.' && groups_of_three(number, last)))
    return Advice{kThousands, with_number(written, number, without(text, ','))};
  if (number.marks == points + ',' && groups_of_three(number, last))
    return Advice{std::string(kThousands) + ", and its decimal mark is a point",
                  with_number(written, number, with_point_for_comma(without(text, '.')))};
  return Advice{"its commas and points cannot be told apart"};
}

/// "1 250 mm", "1'000 mm", "1_000 mm".
Ruling parted_thousands(const WrittenLength& written) {
  for (std::size_t i = 0; i + 2 < written.tokens.size(); ++i) {
    const bool numbers = written.at(i) == 'd' && written.at(i + 2) == 'd';
    if (!numbers || written.at(i - 1) == '/' || slash_follows(written, i + 2)) continue;
    const std::string_view first = written.word(i), mark = written.word(i + 1);
    const bool groups = first.size() <= 3 && first[0] != '0' && written.at(i - 1) != '.' &&
                        written.word(i + 2).size() == 3;
    const auto joined = [&] { return written.with(i + 1, 1, ""); };
    if (mark == "_") return Advice{"there is an underscore in a number", joined()};
    if (groups && mark == "'" && written.at(i + 3) != '"')
      return Advice{"an apostrophe marks feet, not thousands", joined()};
    if (groups && written.at(i + 1) == ' ') return Advice{kThousands, joined()};
    if (written.at(i + 1) == ' ') return Advice{"there is a space inside a number"};
  }
  return {};
}

Ruling leading_zero(const WrittenLength& written) {
  std::string stripped;
  bool found = false;
  for (std::size_t i = 0; i < written.tokens.size(); ++i) {
    const std::string_view word = written.word(i);
    const bool zero = written.at(i) == 'd' && (i == 0 || written.at(i - 1) != '.') &&
                      word.size() > 1 && word[0] == '0';
    found = found || zero;
    stripped += zero ? word.substr(std::min(word.find_first_not_of('0'), word.size() - 1))
                     : written.text(i, i + 1);
  }
  if (!found) return {};
  const std::size_t inches = written.find("'d\"");
  if (inches != WrittenLength::kNone && written.word(inches + 1).size() == 3)
    return Advice{"a number has no leading zero (or the apostrophe parts thousands)"};
  return Advice{"a number has no leading zero", stripped};
}

/// The text with its overlong decimals, token `at`, rounded to nine, such as a program leaves
/// behind: 930.3000000000001. Empty where they round up to a whole.
std::string with_nine_decimals(const WrittenLength& written, std::size_t at) {
  constexpr std::size_t kMost = 9;
  const std::string_view digits = written.word(at);
  std::string rounded(digits.substr(0, kMost));
  if (digits[kMost] >= '5') {
    const std::size_t last = rounded.find_last_not_of('9');
    if (last == std::string::npos) return {};
    ++rounded[last];
    rounded.resize(last + 1);
  }
  rounded.resize(rounded.find_last_not_of('0') + 1);
  return rounded.empty() ? written.with(at - 1, 2, "") : written.with(at, 1, rounded);
}

Ruling too_many_digits(const WrittenLength& written) {
  for (std::size_t i = 0; i < written.tokens.size(); ++i) {
    if (written.at(i) != 'd') continue;
    const bool after_point = i > 0 && written.at(i - 1) == '.';
    const bool in_fraction = written.at(i + 1) == '/' || (i > 0 && written.at(i - 1) == '/');
    const std::size_t digits = written.word(i).size();
    if (in_fraction && digits > 4)
      return Advice{"a fraction has at most 4 digits above and 4 below"};
    if (after_point && digits > 9)
      return Advice{"there are at most 9 digits after the point", with_nine_decimals(written, i)};
    if (!after_point && digits > 6)
      return Advice{"it is too large: there are at most 6 digits before the point"};
  }
  return {};
}

}  // namespace haunch::refusal
