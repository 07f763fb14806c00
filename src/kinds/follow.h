// A leaf that is planed, after glue-up, to follow an opening that is out of square.
#pragma once

#include "haunch/wood.h"

namespace haunch {

/// Takes off what the leaf's opening asks for, of all pieces that come to an edge of the leaf.
void plane_to_follow(Assembly& leaf);

}  // namespace haunch
