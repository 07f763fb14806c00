// What is bought and screwed on, counted from the wood that it is let in to or bored for.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "haunch/wood.h"

namespace haunch {

/// "shelf pins", 5, 8
struct Hardware {
  std::string what;            // "hinges with a cup of", before its size
  std::optional<Length> size;  // by which it is bought
  std::int64_t number = 0;
};

/// For one item.
std::vector<Hardware> hardware_of(const Assembly& wood);

}  // namespace haunch
