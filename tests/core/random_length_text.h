// Random texts: lengths as the grammar allows them, and what becomes of them by a slip of the hand.
#pragma once

#include <random>
#include <string>

namespace haunch::test {

using Random = std::mt19937_64;

/// A text that is a length under at least one of the units.
std::string random_length_text(Random& random);

/// The text with one to three characters left out, put in, changed or doubled.
std::string edited(std::string text, Random& random);

}  // namespace haunch::test
