// Joints that are the same to whatever measures them are measured once.
#pragma once

#include "haunch/wood.h"

namespace haunch {

/// Whether two joints of an assembly have the same to be measured: both pieces are cut alike, as
/// seen from where they meet. So are the two ends of a rail, though one is the other's mirror
/// image.
bool are_alike(const Assembly& assembly, const Joint& a, const Joint& b);

}  // namespace haunch
