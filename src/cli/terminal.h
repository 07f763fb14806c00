// What is known of a terminal.
#pragma once

#include <cstddef>
#include <optional>

namespace haunch {

/// The columns of the terminal at a descriptor; nothing where it is none, or does not say.
std::optional<std::size_t> terminal_columns(int descriptor);

}  // namespace haunch
