// Keys of drawers. A drawer's own spec leaves "fronts.drawer." out.
#pragma once

#include "key_row.h"

namespace haunch::rows {

inline constexpr KeyRow kDrawerKeys[] = {
    object("fronts.drawer", kOfCabinet | kOfShop, "of every drawer"),
};

}  // namespace haunch::rows
