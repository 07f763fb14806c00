#include "second_length_reader.h"

#include <array>
#include <map>
#include <numeric>
#include <regex>
#include <utility>

namespace haunch::test {
namespace {

__extension__ typedef __int128 Wide;

struct Exact {
  Wide over = 0, under = 1;
};

Wide common_measure(Wide a, Wide b) {
  return b == 0 ? a : common_measure(b, a % b);
}

Exact lowest(Wide over, Wide under) {
  const Wide common = common_measure(over, under);
  return {over / common, under / common};
}

Exact plus(Exact a, Exact b) {
  return lowest(a.over * b.under + b.over * a.under, a.under * b.under);
}
Exact times(Exact a, Exact b) {
  return lowest(a.over * b.over, a.under * b.under);
}

/// Every character that is read is put as ASCII: a vulgar fraction as {3/8}.
std::optional<std::string> in_ascii(std::string text) {
  static const std::pair<const char*, const char*> kPlain[] = {
      {"\u00A0", " "},      {"\u202F", " "},     {"\u2032", "'"},     {"\u2019", "'"},
      {"\u2033", "\""},     {"\u201D", "\""},    {"\u2044", "/"},     {"\u00BC", "{1/4}"},
      {"\u00BD", "{1/2}"},  {"\u00BE", "{3/4}"}, {"\u2150", "{1/7}"}, {"\u2151", "{1/9}"},
      {"\u2152", "{1/10}"}, {"\u2153", "{1/3}"}, {"\u2154", "{2/3}"}, {"\u2155", "{1/5}"},
      {"\u2156", "{2/5}"},  {"\u2157", "{3/5}"}, {"\u2158", "{4/5}"}, {"\u2159", "{1/6}"},
      {"\u215A", "{5/6}"},  {"\u215B", "{1/8}"}, {"\u215C", "{3/8}"}, {"\u215D", "{5/8}"},
      {"\u215E", "{7/8}"}};
  if (text.find_first_of("{}") != std::string::npos) return {};
  for (const auto& [wide, plain] : kPlain)
    for (auto at = text.find(wide); at != std::string::npos; at = text.find(wide, at))
      text.replace(at, std::string(wide).size(), plain);
  return text;
}

const std::string kWhole = "(?:0|[1-9][0-9]{0,5})";
const std::string kPart = "[1-9][0-9]{0,3}";
const std::string kNumber = "(" + kWhole + R"((?:\.[0-9]{1,9})?|\.[0-9]{1,9}|(?:)" + kWhole +
                            "(?: +|-))?" + kPart + "/" + kPart + "|(?:" + kWhole +
                            R"((?: *|-))?\{)" + kPart + "/" + kPart + R"(\}))";
const std::string kInch = R"((?:"|in|IN|in\.|IN\.|inch|INCH|inches|INCHES))";

/// A value of at most 9 digits each side of the point.
Exact decimal_value(const std::string& digits) {
  const auto point = digits.find('.');
  if (point == std::string::npos) return {std::stoll(digits), 1};
  const std::string decimals = digits.substr(point + 1);
  Wide scale = 1;
  for (std::size_t i = 0; i < decimals.size(); ++i)
    scale *= 10;
  const Exact whole{point == 0 ? 0 : std::stoll(digits.substr(0, point)), 1};
  return plus(whole, lowest(std::stoll(decimals), scale));
}

/// The value of a number that fits kNumber; nothing if its fraction is not below 1.
std::optional<Exact> number_value(const std::string& number) {
  const auto slash = number.find('/');
  if (slash == std::string::npos) return decimal_value(number);
  const auto gap = number.find_last_of(" -{", slash);
  const Exact fraction{std::stoll(number.substr(gap == std::string::npos ? 0 : gap + 1)),
                       std::stoll(number.substr(slash + 1))};
  if (fraction.over >= fraction.under) return {};
  if (gap == std::string::npos || gap == 0) return fraction;
  return plus({std::stoll(number), 1}, fraction);
}

Exact in_mm(const std::string& unit) {
  static const std::map<std::string, Exact> kUnits{
      {"mm", {1, 1}},       {"MM", {1, 1}},       {"cm", {10, 1}},    {"CM", {10, 1}},
      {"m", {1000, 1}},     {"\"", {127, 5}},     {"in", {127, 5}},   {"IN", {127, 5}},
      {"in.", {127, 5}},    {"IN.", {127, 5}},    {"inch", {127, 5}}, {"INCH", {127, 5}},
      {"inches", {127, 5}}, {"INCHES", {127, 5}}, {"'", {1524, 5}},   {"ft", {1524, 5}},
      {"FT", {1524, 5}},    {"ft.", {1524, 5}},   {"FT.", {1524, 5}}, {"foot", {1524, 5}},
      {"FOOT", {1524, 5}},  {"feet", {1524, 5}},  {"FEET", {1524, 5}}};
  return kUnits.at(unit);
}

std::int64_t steps_in(Exact mm) {
  const Exact steps = times(mm, {1'600'000, 1});
  const Wide below = steps.over / steps.under, rest = steps.over % steps.under;
  return static_cast<std::int64_t>(2 * rest >= steps.under ? below + 1 : below);
}

std::optional<std::int64_t> one_number(const std::string& number, const std::string& unit,
                                       Unit bare) {
  const bool fraction = number.find('/') != std::string::npos;
  if (unit.empty() && fraction && bare == Unit::mm) return {};
  const auto value = number_value(number);
  if (!value) return {};
  return steps_in(times(*value, in_mm(unit.empty() ? std::string(word_of(bare)) : unit)));
}

std::optional<std::int64_t> feet_and_inches(const std::string& feet, const std::string& inches) {
  const auto value = number_value(inches);
  if (!value || value->over >= 12 * value->under) return {};
  return steps_in(plus(times({std::stoll(feet), 1}, in_mm("ft")), times(*value, in_mm("in"))));
}

}  // namespace

std::optional<std::int64_t> second_reading(const std::string& text, Unit bare) {
  static const std::regex one(
      " *" + kNumber +
      R"( *(mm|MM|cm|CM|m|"|in\.?|IN\.?|inch|INCH|inches|INCHES|'|ft\.?|FT\.?|foot|FOOT|feet|FEET)? *)");
  static const std::regex two(
      " *(" + kWhole + R"() *(?:'(?: *|-)|(?:ft|FT|foot|FOOT|feet|FEET)(?!\.) *|(?:ft|FT)\. +))" +
      kNumber + " *" + kInch + " *");
  const auto plain = in_ascii(text);
  std::smatch parts;
  if (plain && std::regex_match(*plain, parts, one)) return one_number(parts[1], parts[2], bare);
  if (plain && std::regex_match(*plain, parts, two)) return feet_and_inches(parts[1], parts[2]);
  return {};
}

}  // namespace haunch::test
