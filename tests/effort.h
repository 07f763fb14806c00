// How much the tests try that draw what they try at random.
#pragma once

#include <algorithm>
#include <cstdint>
#include <cstdlib>

namespace haunch::test {

/// `usual` times the environment's HAUNCH_TEST_EFFORT, such as 50 or 0.25; at least one.
inline std::int64_t times_effort(std::int64_t usual) {
  const char* text = std::getenv("HAUNCH_TEST_EFFORT");
  const double effort = text == nullptr ? 1 : std::strtod(text, nullptr);
  return std::max<std::int64_t>(1, static_cast<std::int64_t>(static_cast<double>(usual) * effort));
}

}  // namespace haunch::test
