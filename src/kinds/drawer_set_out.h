// From a drawer's settled sizes to its wood.
#pragma once

#include "drawer_plan.h"
#include "haunch/wood.h"

namespace haunch {

/// The drawer alone, in its own axes: from the front's lower left corner at its face. It has its
/// opening about it.
Assembly set_out_drawer(const DrawerPlan& plan);

}  // namespace haunch
