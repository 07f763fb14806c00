// A second opinion on what a text says: the grammar as one regular expression over plain
// characters, and the value as an exact ratio of millimetres. Slow, and written from
// docs/lengths.md alone.
#pragma once

#include <cstdint>
#include <optional>
#include <string>

#include "haunch/length_text.h"

namespace haunch::test {

/// The steps in the length that `text` says, or nothing when it is to be refused.
std::optional<std::int64_t> second_reading(const std::string& text, Unit bare);

}  // namespace haunch::test
