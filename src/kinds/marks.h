// Marks for the pieces of one item, which are made in their order.
#pragma once

#include <string>

#include "haunch/wood.h"

namespace haunch {

/// A, B … Z, AA, AB … for pieces 0, 1 …
std::string piece_mark(std::size_t piece);

/// Adds a piece with the next mark, not cut yet; returns its number. Its key is its name, unless
/// that hangs on what other pieces there are.
std::size_t add_piece(Assembly& assembly, std::string name, Role role, const Triple& blank,
                      const Place& place);

/// Adds a piece that a joint has of its own: "dowel of top rail", under a key below that of what
/// enters there, "top-rail/dowel-2".
std::size_t add_piece_of(Assembly& assembly, const std::string& what, std::size_t enters, Role role,
                         const Triple& blank, const Place& place);

/// A name as keys are written: "left-stile".
std::string in_key(std::string name);

}  // namespace haunch
