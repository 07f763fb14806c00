// The kind of work `door`: a leaf of grooved frame and panels.
#pragma once

#include <string_view>
#include <vector>

#include "document.h"
#include "kind.h"

namespace haunch {

JobReading read_door(const Value& item, const ShopDefaults* shop, std::string_view default_id);

/// What a shop file says of doors that cannot be.
std::vector<Problem> door_shop_problems(const Value& shop);

}  // namespace haunch
