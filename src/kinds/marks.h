// Marks for the pieces of one item.
#pragma once

#include <string>

namespace haunch {

/// A, B … Z, AA, AB … for pieces 0, 1 …
std::string piece_mark(std::size_t piece);

}  // namespace haunch
