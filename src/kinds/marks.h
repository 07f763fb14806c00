// Marks for the pieces of one item, which are made in their order.
#pragma once

#include <string>
#include <string_view>

#include "haunch/wood.h"

namespace haunch {

/// A, B … Z, AA, AB … for pieces 0, 1 …
std::string piece_mark(std::size_t piece);

/// Adds a piece with the next mark, not cut yet; returns its number.
std::size_t add_piece(Assembly& assembly, std::string name, Role role, const Triple& blank,
                      const Place& place);

}  // namespace haunch
