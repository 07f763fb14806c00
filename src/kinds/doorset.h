// The kind of work `doorset`: a frame and the leaf, or pair of leaves, that hangs in it, set out
// and checked together.
#pragma once

#include <string_view>
#include <vector>

#include "document.h"
#include "kind.h"

namespace haunch {

JobReading read_doorset(const Value& item, const ShopDefaults* shop, std::string_view default_id);

/// A shop file says nothing of doorsets that it does not say of doors and frames.
std::vector<Problem> doorset_shop_problems(const Value& shop);

}  // namespace haunch
