// Names of what stands at a side, and of its twin at the other.
#pragma once

#include <string>

namespace haunch {

/// A name with the words "left" and "right" in it changed over: "right side" of "left side".
std::string twin_words(const std::string& name);

}  // namespace haunch
