// The grammar of lengths: yes or no, and how long. Why not is for length_refusal.h.
#pragma once

#include <optional>
#include <string_view>

#include "haunch/length_text.h"

namespace haunch {

/// The length that `text` says, or nothing. See read_length.
std::optional<Length> length_written(std::string_view text, Unit bare);

}  // namespace haunch
