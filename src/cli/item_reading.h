// Reading the item of a record, with what it takes from others.
#pragma once

#include <optional>

#include "other_items.h"
#include "shops.h"
#include "spec_source.h"

namespace haunch {

/// The items that one names, each with the shop file of its own place; nothing where it is not
/// known what else there is. To be used while the record stands.
std::optional<OtherItems> others_of(const Record& record, const Shops& shops);

/// Reads the item of a record that has one.
JobReading read_item(const Record& record, const Shops& shops);

}  // namespace haunch
