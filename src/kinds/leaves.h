// Leaves put together: in pairs, and into what they hang in.
#pragma once

#include <string>

#include "haunch/wood.h"

namespace haunch {

/// Adds the pieces and joints of `leaf` to `whole` at a place, under marks of their own.
void add_leaf(Assembly& whole, Assembly leaf, const Triple& place, const std::string& before_names);

}  // namespace haunch
