// The kind of work `doorset`: a frame and the leaf, or pair of leaves, that hangs in it, set out
// and checked together.
#pragma once

#include <string_view>

#include "document.h"
#include "kind.h"

namespace haunch {

JobReading read_doorset(const Value& item, const ShopDefaults* shop, std::string_view default_id);

}  // namespace haunch
