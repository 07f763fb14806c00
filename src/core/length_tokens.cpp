#include "length_tokens.h"

#include <algorithm>
#include <array>

#include "haunch/length.h"
#include "utf8.h"

namespace haunch {
namespace {

constexpr char32_t kNotUtf8 = 0xFFFFFFFF;

/// The first character of `text`; a byte that is not UTF-8 stands for itself alone.
Utf8Character first_or_byte(std::string_view text) {
  const Utf8Character first = first_character(text);
  return first.size == 0 ? Utf8Character{1, kNotUtf8} : first;
}

constexpr std::array<TokenKind, 128> ascii_kinds() {
  std::array<TokenKind, 128> kinds{};
  kinds.fill(TokenKind::other);
  for (std::size_t c = '0'; c <= '9'; ++c)
    kinds[c] = TokenKind::digits;
  for (std::size_t c = 'a'; c <= 'z'; ++c)
    kinds[c] = kinds[c - 'a' + 'A'] = TokenKind::word;
  for (const TokenKind kind :
       {TokenKind::blank, TokenKind::point, TokenKind::comma, TokenKind::slash, TokenKind::hyphen,
        TokenKind::foot_mark, TokenKind::inch_mark})
    kinds[static_cast<std::size_t>(kind)] = kind;
  return kinds;
}

TokenKind wide_kind(char32_t code) {
  switch (code) {
    case kNotUtf8:
      return TokenKind::not_utf8;
    case 0x00A0:
    case 0x202F:
      return TokenKind::blank;
    case 0x2019:
    case 0x2032:
      return TokenKind::foot_mark;
    case 0x201D:
    case 0x2033:
      return TokenKind::inch_mark;
    case 0x2044:
      return TokenKind::slash;
    case 0x00B5:
    case 0x03BC:
      return TokenKind::word;
    default:
      return vulgar_fraction(code) ? TokenKind::vulgar : TokenKind::other;
  }
}

TokenKind kind_of(char32_t code) {
  constexpr auto kAsciiKinds = ascii_kinds();
  return code < kAsciiKinds.size() ? kAsciiKinds[code] : wide_kind(code);
}

bool runs_on(TokenKind kind) {
  return kind == TokenKind::digits || kind == TokenKind::blank || kind == TokenKind::word;
}

}  // namespace

Token first_token(std::string_view text) {
  if (text.empty()) return {};
  const Utf8Character first = first_or_byte(text);
  const TokenKind kind = kind_of(first.code);
  std::size_t size = first.size;
  while (runs_on(kind) && size < text.size()) {
    const Utf8Character next = first_or_byte(text.substr(size));
    if (kind_of(next.code) != kind) break;
    size += next.size;
  }
  return {kind, text.substr(0, size), first.code};
}

std::optional<Ratio> vulgar_fraction(char32_t character) {
  struct Vulgar {
    char32_t character;
    Ratio value;
  };
  constexpr Vulgar kVulgar[] = {
      {0x00BC, {1, 4}},  {0x00BD, {1, 2}}, {0x00BE, {3, 4}}, {0x2150, {1, 7}}, {0x2151, {1, 9}},
      {0x2152, {1, 10}}, {0x2153, {1, 3}}, {0x2154, {2, 3}}, {0x2155, {1, 5}}, {0x2156, {2, 5}},
      {0x2157, {3, 5}},  {0x2158, {4, 5}}, {0x2159, {1, 6}}, {0x215A, {5, 6}}, {0x215B, {1, 8}},
      {0x215C, {3, 8}},  {0x215D, {5, 8}}, {0x215E, {7, 8}}};
  const auto* const found =
      std::find_if(std::begin(kVulgar), std::end(kVulgar),
                   [&](const Vulgar& vulgar) { return vulgar.character == character; });
  if (found == std::end(kVulgar)) return {};
  return found->value;
}

std::int64_t unit_steps(const Token& token) {
  struct Named {
    std::string_view small, capital;
    std::int64_t steps;
  };
  constexpr std::int64_t kMm = Length::kStepsPerMm, kInch = Length::kStepsPerInch;
  constexpr Named kUnits[] = {
      {"mm", "MM", kMm},           {"in", "IN", kInch},          {"cm", "CM", 10 * kMm},
      {"m", "m", 1000 * kMm},      {"ft", "FT", 12 * kInch},     {"inch", "INCH", kInch},
      {"inches", "INCHES", kInch}, {"foot", "FOOT", 12 * kInch}, {"feet", "FEET", 12 * kInch}};
  if (token.kind == TokenKind::inch_mark) return kInch;
  if (token.kind == TokenKind::foot_mark) return 12 * kInch;
  for (const Named& unit : kUnits)
    if (token.text == unit.small || token.text == unit.capital) return unit.steps;
  return 0;
}

bool takes_full_stop(std::string_view unit) {
  return unit == "in" || unit == "ft" || unit == "IN" || unit == "FT";
}

}  // namespace haunch
