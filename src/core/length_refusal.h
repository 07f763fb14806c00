// What is said of a text that is not a length.
#pragma once

#include <string>
#include <string_view>

#include "haunch/length_text.h"

namespace haunch {

struct Refusal {
  std::string why;      // a clause, as in LengthReading
  std::string instead;  // what to write, where it can be told: it reads as a length
};

/// Why `text`, which is not a length, is not one. Never empty-handed: `why` is set.
Refusal refusal_of(std::string_view text, Unit bare);

}  // namespace haunch
