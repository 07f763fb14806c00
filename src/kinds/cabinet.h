// The kind of work `cabinet`: a case, the frame before it, and what closes its openings.
#pragma once

#include <string_view>

#include "document.h"
#include "kind.h"

namespace haunch {

JobReading read_cabinet(const Value& item, const ShopDefaults* shop, std::string_view default_id);

}  // namespace haunch
