// A second opinion on dowels, half-laps and splined mitres: by asking of points beside their faces
// whether there is wood.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "haunch/wood.h"

namespace haunch::test {

/// Whether a dowel stands where another dowel or tenon does, as far as blanks tell: a spec may ask
/// for that, and the checks find it.
bool dowels_meet_others(const Assembly& assembly);

/// What is wrong with the joints of an assembly, and with its wood where they are; in words. The
/// same seed asks of the same points.
std::vector<std::string> corner_faults(const Assembly& assembly, std::uint64_t seed);

}  // namespace haunch::test
