// The kind of work `frame`: a door frame or lining, from the wall's opening to its leaf.
#pragma once

#include <string_view>

#include "document.h"
#include "kind.h"

namespace haunch {

JobReading read_frame(const Value& item, const ShopDefaults* shop, std::string_view default_id);

}  // namespace haunch
