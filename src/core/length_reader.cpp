// length   = number [unit] | whole foot ["-" | blank] number inch
// number   = whole ["." decimals] | "." decimals | [whole ("-" | blank)] fraction | whole vulgar
// fraction = above slash below | vulgar
//
// Blanks may stand before a unit and around the whole. "-" joins feet and inches after a foot mark
// only: after the word ft it would read as a minus.
#include "length_reader.h"

#include "length_tokens.h"

namespace haunch {
namespace {

__extension__ typedef __int128 Wide;

constexpr std::int64_t kInch = Length::kStepsPerInch;
constexpr std::int64_t kFoot = 12 * kInch;

constexpr std::size_t kMostWholeDigits = 6;
constexpr std::size_t kMostDecimals = 9;
constexpr std::size_t kMostFractionDigits = 4;

struct Number {
  enum class Form { whole, decimal, fraction };
  Ratio value;
  Form form = Form::whole;
};

bool is_whole(std::string_view digits, std::size_t most_digits) {
  const bool leading_zero = digits.size() > 1 && digits[0] == '0';
  return !digits.empty() && digits.size() <= most_digits && !leading_zero;
}

std::int64_t digits_value(std::string_view digits) {
  std::int64_t value = 0;
  for (const char digit : digits)
    value = value * 10 + (digit - '0');
  return value;
}

std::int64_t power_of_ten(std::size_t exponent) {
  std::int64_t power = 1;
  for (; exponent > 0; --exponent)
    power *= 10;
  return power;
}

/// `value` units of `steps` each, to the nearest step, a tie upwards.
Length nearest_length(Ratio value, std::int64_t steps) {
  if (value.of == 1) return Length::from_steps(value.parts * steps);
  const Wide twice = Wide{2} * value.parts * steps;
  // NOLINTNEXTLINE(clang-analyzer-core.DivideZero): no fraction with a denominator of 0 gets here
  return Length::from_steps(static_cast<std::int64_t>((twice + value.of) / (Wide{2} * value.of)));
}

std::optional<Length> bare_length(const Number& number, Unit bare) {
  if (bare == Unit::inch) return nearest_length(number.value, kInch);
  if (number.form == Number::Form::fraction) return {};
  return nearest_length(number.value, Length::kStepsPerMm);
}

class Reader {
 public:
  explicit Reader(std::string_view text) : rest_(text) { advance(); }

  std::optional<Length> length(Unit bare) {
    skip_blanks();
    const auto number = take_number();
    if (!number) return {};
    skip_blanks();
    if (at(TokenKind::end)) return bare_length(*number, bare);
    const bool foot_mark = at(TokenKind::foot_mark);
    const std::int64_t unit = take_unit();
    if (unit == 0) return {};
    const bool joined = foot_mark && take(TokenKind::hyphen);
    if (!joined) skip_blanks();
    if (!joined && at(TokenKind::end)) return nearest_length(number->value, unit);
    if (unit != kFoot || number->form != Number::Form::whole) return {};
    return take_inches(number->value.parts);
  }

 private:
  std::optional<Length> take_inches(std::int64_t feet) {
    const auto inches = take_number();
    if (!inches || inches->value.parts >= 12 * inches->value.of) return {};
    skip_blanks();
    if (take_unit() != kInch) return {};
    skip_blanks();
    if (!at(TokenKind::end)) return {};
    const auto [parts, of] = inches->value;
    return nearest_length({feet * 12 * of + parts, of}, kInch);
  }

  std::optional<Number> take_number() {
    if (at(TokenKind::vulgar)) return take_fraction();
    const std::string_view digits = take_digits();
    if (at(TokenKind::slash)) return take_below(digits);
    if (at(TokenKind::point)) return take_decimals(digits);
    if (!is_whole(digits, kMostWholeDigits)) return {};
    const std::int64_t whole = digits_value(digits);
    if (at(TokenKind::vulgar) || take(TokenKind::hyphen)) return take_fraction(whole);
    if (skip_blanks() && (at(TokenKind::digits) || at(TokenKind::vulgar)))
      return take_fraction(whole);
    return Number{{whole, 1}, Number::Form::whole};
  }

  std::optional<Number> take_decimals(std::string_view whole) {
    advance();
    const std::string_view decimals = take_digits();
    if (!whole.empty() && !is_whole(whole, kMostWholeDigits)) return {};
    if (decimals.empty() || decimals.size() > kMostDecimals) return {};
    const std::int64_t of = power_of_ten(decimals.size());
    return Number{{digits_value(whole) * of + digits_value(decimals), of}, Number::Form::decimal};
  }

  std::optional<Number> take_fraction(std::int64_t whole = 0) {
    if (const auto vulgar = vulgar_fraction(token_.character); vulgar && at(TokenKind::vulgar)) {
      advance();
      return Number{{whole * vulgar->of + vulgar->parts, vulgar->of}, Number::Form::fraction};
    }
    const std::string_view above = take_digits();
    if (!at(TokenKind::slash)) return {};
    return take_below(above, whole);
  }

  std::optional<Number> take_below(std::string_view above, std::int64_t whole = 0) {
    advance();
    const std::string_view below = take_digits();
    if (!is_whole(above, kMostFractionDigits) || !is_whole(below, kMostFractionDigits)) return {};
    const std::int64_t parts = digits_value(above), of = digits_value(below);
    if (parts == 0 || parts >= of) return {};
    return Number{{whole * of + parts, of}, Number::Form::fraction};
  }

  /// The steps of the unit that stands here, 0 for none. A full stop is followed by a blank or the
  /// end: "6ft.8in" could be 8 or 0.8.
  std::int64_t take_unit() {
    const Token unit = token_;
    const std::int64_t steps = unit_steps(unit);
    if (steps == 0) return 0;
    advance();
    if (unit.kind != TokenKind::word || !take(TokenKind::point)) return steps;
    const bool ended = at(TokenKind::blank) || at(TokenKind::end);
    return ended && takes_full_stop(unit.text) ? steps : 0;
  }

  std::string_view take_digits() {
    if (!at(TokenKind::digits)) return {};
    const std::string_view digits = token_.text;
    advance();
    return digits;
  }

  bool skip_blanks() { return take(TokenKind::blank); }

  bool take(TokenKind kind) {
    if (!at(kind)) return false;
    advance();
    return true;
  }

  bool at(TokenKind kind) const { return token_.kind == kind; }

  void advance() {
    token_ = first_token(rest_);
    rest_.remove_prefix(token_.text.size());
  }

  std::string_view rest_;
  Token token_;
};

}  // namespace

std::optional<Length> length_written(std::string_view text, Unit bare) {
  return Reader(text).length(bare);
}

}  // namespace haunch
