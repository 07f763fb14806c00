#include <numeric>
#include <vector>

#include "length_reader.h"
#include "refusal/rules.h"

namespace haunch::refusal {
namespace {

/// A fraction of two numbers, with the whole number before it.
struct Fraction {
  std::size_t first = 0, end = 0;  // its tokens, the whole number included
  bool has_whole = false;
  int whole = 0, above = 0, below = 0;
};

/// The fraction whose upper number is token `i`. Its numbers have few digits.
Fraction fraction_at(const WrittenLength& written, std::size_t i) {
  const auto number = [&](std::size_t at) { return std::stoi(std::string(written.word(at))); };
  Fraction fraction{i, i + 3, false, 0, number(i), number(i + 2)};
  const bool joined = i >= 2 && (written.at(i - 1) == ' ' || written.at(i - 1) == '-');
  fraction.has_whole = joined && written.at(i - 2) == 'd';
  if (!fraction.has_whole) return fraction;
  fraction.first = i - 2;
  fraction.whole = number(i - 2);
  return fraction;
}

/// The text with `number` for the fraction. It was meant in inches: a whole number that is left
/// must not turn into millimetres where no unit is given.
std::string with_number(const WrittenLength& written, const Fraction& fraction,
                        const std::string& number) {
  const bool needs_unit = written.bare == Unit::mm && written.find_unit() == WrittenLength::kNone;
  return written.with(fraction.first, fraction.end - fraction.first, number) +
         (needs_unit ? " in" : "");
}

std::string mixed_number(int whole, int above, int below) {
  if (above == 0) return std::to_string(whole);
  const int common = std::gcd(above, below);
  return std::to_string(whole) + ' ' + std::to_string(above / common) + '/' +
         std::to_string(below / common);
}

/// Where the digits of an upper number could be parted into a whole number and one below `below`.
std::vector<std::size_t> lost_spaces(std::string_view digits, int below) {
  std::vector<std::size_t> places;
  for (std::size_t i = 1; i < digits.size(); ++i)
    if (digits[i] != '0' && std::stoi(std::string(digits.substr(i))) < below) places.push_back(i);
  return places;
}

Advice improper(const WrittenLength& written, const Fraction& fraction) {
  const std::size_t above = fraction.end - 3;
  const std::string digits(written.word(above));
  const std::string text = written.text(above, fraction.end);
  const std::string proper = mixed_number(fraction.whole + fraction.above / fraction.below,
                                          fraction.above % fraction.below, fraction.below);
  const auto spaces = lost_spaces(digits, fraction.below);
  if (fraction.has_whole || spaces.empty())
    return {"the fraction " + text + " is not below 1", with_number(written, fraction, proper)};
  // Text tools that take the characters for fractions apart leave a fraction slash and no space: 4⅜
  // to 43⁄8.
  if (spaces.size() == 1 && written.word(above + 1) != "/") {
    const std::string parted = digits.substr(0, spaces[0]) + ' ' + digits.substr(spaces[0]) + '/' +
                               std::to_string(fraction.below);
    return {"the space before the fraction is lost", with_number(written, fraction, parted)};
  }
  return {text + " is not below 1; it could be " + proper +
          ", or a whole number and a fraction that lost their space"};
}

}  // namespace

Ruling fraction_value(const WrittenLength& written) {
  const std::size_t start = written.find("d/d");
  if (start == WrittenLength::kNone) return {};
  const Fraction fraction = fraction_at(written, start);
  if (fraction.below == 0) return Advice{"the fraction is divided by 0"};
  if (fraction.above == 0)
    return Advice{"the fraction is 0",
                  with_number(written, fraction, std::to_string(fraction.whole))};
  if (fraction.above >= fraction.below) return improper(written, fraction);
  return {};
}

Ruling half_a_fraction(const WrittenLength& written) {
  if (written.find("/") == WrittenLength::kNone || written.find("d/d") != WrittenLength::kNone)
    return {};
  return Advice{"a fraction has a whole number above and one below"};
}

Ruling bare_fraction(const WrittenLength& written) {
  const std::string text = written.text();
  const bool length_in_inches = written.bare == Unit::mm && length_written(text, Unit::inch);
  if (!length_in_inches) return {};
  return Advice{"a fraction without a unit is read in inches only", text + " in"};
}

}  // namespace haunch::refusal
