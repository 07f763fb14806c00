// Names of what stands at a side, and of its twin at the other.
#pragma once

#include <string>

#include "kind.h"

namespace haunch {

/// A name with the words "left" and "right" in it changed over: "right side" of "left side".
std::string twin_words(const std::string& name);

/// A chain that is told from the left is turned; all are in the twin's words.
Chain twin_chain(Chain chain);

}  // namespace haunch
