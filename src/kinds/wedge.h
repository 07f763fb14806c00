// Wedges that hold a through tenon, driven in at both its edges from where it comes out.
#pragma once

#include "tenon.h"

namespace haunch {

/// Cuts the wedges of a joint whose mortise is flared for them, two for each tenon, and stands them
/// in it. Their grain runs along the tenon's; they are as wide as the tenon is thick.
void add_wedges(Assembly& assembly, std::size_t joint);

}  // namespace haunch
