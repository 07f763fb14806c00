#include "haunch/length_text.h"

#include <cassert>
#include <charconv>
#include <utility>

#include "length_reader.h"
#include "length_refusal.h"

namespace haunch {
namespace {

constexpr std::uint64_t kBillion = 1'000'000'000;
constexpr int kBillionDigits = 9;

std::uint64_t steps_per(Unit unit) {
  return unit == Unit::mm ? std::uint64_t{Length::kStepsPerMm}
                          : std::uint64_t{Length::kStepsPerInch};
}

/// The steps without their sign; right for the lowest count too.
std::uint64_t magnitude(Length length) {
  const auto bits = static_cast<std::uint64_t>(length.steps());
  return length < Length() ? 0 - bits : bits;
}

void append_whole(std::string& out, std::uint64_t whole) {
  char digits[20];
  const auto written = std::to_chars(std::begin(digits), std::end(digits), whole);
  out.append(digits, written.ptr);
}

/// The point and the first `places` of nine decimals.
void append_decimals(std::string& out, std::uint64_t billionths, int places) {
  char digits[1 + kBillionDigits] = {'.'};
  for (int i = kBillionDigits; i > 0; --i, billionths /= 10)
    digits[i] = static_cast<char>('0' + billionths % 10);
  out.append(digits, std::size_t{1} + static_cast<std::size_t>(places));
}

void append_trimmed(std::string& out, std::uint64_t billionths) {
  if (billionths == 0) return;
  int places = kBillionDigits;
  for (std::uint64_t rest = billionths; rest % 10 == 0; rest /= 10)
    --places;
  append_decimals(out, billionths, places);
}

/// Rounded to nine decimals, half up; exact in millimetres. A step is more than a billionth of
/// either unit, so that the rounding never carries into the whole. Most lengths end sooner: those
/// are divided out digit by digit.
void append_magnitude(std::string& out, std::uint64_t steps, std::uint64_t per) {
  char text[20 + 1 + kBillionDigits];
  char* end = std::to_chars(std::begin(text), std::end(text), steps / per).ptr;
  const char* const whole = end;
  std::uint64_t rest = steps % per;
  if (rest != 0) *end++ = '.';
  for (int place = 0; rest != 0 && place < kBillionDigits; ++place, rest %= per) {
    rest *= 10;
    *end++ = static_cast<char>('0' + rest / per);
  }
  out.append(text, static_cast<std::size_t>((rest == 0 ? end : whole) - std::begin(text)));
  if (rest != 0) append_trimmed(out, (steps % per * kBillion + per / 2) / per);
}

void append_fraction(std::string& out, std::uint64_t whole, std::uint64_t parts, std::uint64_t of) {
  while (parts > 0 && parts % 2 == 0) {
    parts /= 2;
    of /= 2;
  }
  if (whole > 0 || parts == 0) append_whole(out, whole);
  if (parts == 0) return;
  if (whole > 0) out += ' ';
  append_whole(out, parts);
  out += '/';
  append_whole(out, of);
}

/// What a fraction leaves over: to 0.0001 in, or to nine places where that would say nothing.
void append_left_over(std::string& out, std::uint64_t steps) {
  constexpr std::uint64_t kTenThousandth = Length::kStepsPerInch / 10'000;
  const std::uint64_t rounded = (steps + kTenThousandth / 2) / kTenThousandth * kTenThousandth;
  append_magnitude(out, rounded > 0 ? rounded : steps, Length::kStepsPerInch);
}

}  // namespace

LengthReading read_length(std::string_view text, Unit bare) {
  LengthReading reading;
  reading.length = length_written(text, bare);
  if (reading.length) return reading;
  Refusal refusal = refusal_of(text, bare);
  reading.why = std::move(refusal.why);
  reading.instead = std::move(refusal.instead);
  return reading;
}

std::string decimal(Length length, Unit unit) {
  std::string text;
  append_decimal(text, length, unit);
  return text;
}

void append_decimal(std::string& out, Length length, Unit unit) {
  if (length < Length()) out += '-';
  append_magnitude(out, magnitude(length), steps_per(unit));
}

FixedText fixed_decimal(Length length, Unit unit, int places) {
  assert(places >= 0 && places <= kBillionDigits);
  std::uint64_t scale = 1;
  for (int i = 0; i < places; ++i)
    scale *= 10;
  const std::uint64_t per = steps_per(unit);
  const std::uint64_t parts = magnitude(length) % per * scale;
  const std::uint64_t rounded = (parts + per / 2) / per;
  const std::uint64_t whole = magnitude(length) / per + rounded / scale;

  FixedText fixed;
  fixed.exact = parts % per == 0;
  if (length < Length() && whole + rounded > 0) fixed.text += '-';
  append_whole(fixed.text, whole);
  if (places > 0) append_decimals(fixed.text, rounded % scale * (kBillion / scale), places);
  return fixed;
}

int exact_places(Length length, Unit unit, int most) {
  std::uint64_t rest = magnitude(length);
  int places = 0;
  while (places < most && (rest %= steps_per(unit)) != 0) {
    rest *= 10;
    ++places;
  }
  return places;
}

std::string inch_fraction(Length length, int denominator) {
  assert(denominator >= 1 && denominator <= 512 && (denominator & (denominator - 1)) == 0);
  constexpr std::uint64_t kInch = Length::kStepsPerInch;
  const auto of = static_cast<std::uint64_t>(denominator);
  const std::uint64_t steps = magnitude(length);
  const std::uint64_t part = kInch / of;
  const std::uint64_t parts = (steps % kInch + part / 2) / part;
  const std::uint64_t shown = steps / kInch * kInch + parts * part;
  const bool negative = length < Length();

  std::string text = negative && shown > 0 ? "-" : "";
  append_fraction(text, shown / kInch, parts % of, of);
  if (steps == shown) return text;
  text += (steps > shown) == negative ? " -" : " +";
  append_left_over(text, steps > shown ? steps - shown : shown - steps);
  return text;
}

}  // namespace haunch
