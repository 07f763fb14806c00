// The kind of work "drawer": a box that slides in an opening, with its front.
#pragma once

#include <string_view>

#include "kind.h"

namespace haunch {

/// `shop` may be null.
JobReading read_drawer(const Value& item, const ShopDefaults* shop, std::string_view default_id);

}  // namespace haunch
