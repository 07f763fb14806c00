// Cautions that more than one kind of work tells of.
#pragma once

#include "kind.h"

namespace haunch {

/// Of work in a building that stands.
Caution old_paint();

}  // namespace haunch
