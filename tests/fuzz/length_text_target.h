// What must hold of any bytes that are read as a length.
#pragma once

#include <algorithm>
#include <cstdint>
#include <cstdlib>
#include <string>
#include <string_view>

#include "haunch/length_text.h"

namespace haunch::length_target {

inline void require(bool holds) {
  if (!holds) std::abort();
}

inline bool reads_as(const std::string& text, Unit bare, Length length) {
  return read_length(text, bare).length == length;
}

/// What is printed of a length reads as the same length, under either unit.
inline void require_printed_and_read(Length length, Unit unit) {
  const std::string bare = decimal(length, unit);
  const std::string with_unit = bare + " " + std::string(word_of(unit));
  const bool six_digits = std::min(bare.find('.'), bare.size()) <= 6;  // more are not read
  require(!six_digits || reads_as(bare, unit, length));
  require(!six_digits || reads_as(with_unit, Unit::mm, length));
  require(!six_digits || reads_as(with_unit, Unit::inch, length));
  const std::string fraction = inch_fraction(length, 64) + " in";
  const bool even = length.steps() % (Length::kStepsPerInch / 64) == 0;
  require(even == (fraction.find_first_of("+-") == std::string::npos));
  require(!even || length >= Length::from_inch_parts(1'000'000) ||
          reads_as(fraction, unit, length));
}

/// A refusal is a short line, and what it says to write is a length.
inline void require_helpful(const LengthReading& refused, Unit bare) {
  require(!refused.why.empty() && refused.why.size() < 200 && refused.instead.size() < 50);
  for (const std::string_view text :
       {std::string_view(refused.why), std::string_view(refused.instead)})
    require(std::all_of(text.begin(), text.end(),
                        [](unsigned char c) { return c >= 0x20 && c != 0x7F; }));
  require(refused.instead.empty() || read_length(refused.instead, bare).length.has_value());
}

inline void length_text_target(const std::uint8_t* bytes, std::size_t size) {
  const std::string text(bytes, bytes + size);
  for (const Unit bare : {Unit::mm, Unit::inch}) {
    const LengthReading reading = read_length(text, bare);
    if (!reading.length) {
      require_helpful(reading, bare);
      continue;
    }
    require(reading.why.empty() && reading.instead.empty() && *reading.length >= Length());
    require_printed_and_read(*reading.length, Unit::mm);
    require_printed_and_read(*reading.length, Unit::inch);
  }
}

}  // namespace haunch::length_target
