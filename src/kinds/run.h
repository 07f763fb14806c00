// The kind of work `run`: cabinets along a wall, with what is made between them and beside them.
#pragma once

#include <string_view>

#include "document.h"
#include "other_items.h"

namespace haunch {

/// `others`: the items of the same specs, among them the cabinets that it names; null where it is
/// read by itself, which cannot be.
JobReading read_run(const Value& item, const ShopDefaults* shop, std::string_view default_id,
                    const OtherItems* others);

}  // namespace haunch
