// Whether bytes are UTF-8, and what else they may be.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

#include "document.h"

namespace haunch {

inline constexpr char32_t kByteOrderMark = 0xFEFF;
inline constexpr std::string_view kStrayMark =
    "a byte order mark within the file, as from files put together; remove it";

/// Where the first byte of `text` stands that belongs to no byte order mark: 0 or 3.
std::size_t start_of(std::string_view text);

/// Says so of a text that begins as UTF-16 or UTF-32 do. The first four bytes decide.
std::optional<Problem> foreign_problem(std::string_view text);

/// The same, and the first byte of a text that is not UTF-8, or a byte order mark but at its start.
std::optional<Problem> encoding_problem(std::string_view text);

/// The words for the first byte of `text`, which begins no character of UTF-8.
std::string not_utf8(std::string_view text);

}  // namespace haunch
