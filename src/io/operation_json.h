// The operations of an item as JSON: what is set, and where it is run.
#pragma once

#include "json_text.h"
#include "report.h"

namespace haunch {

/// The member "operations" of an open item.
void append_operations_json(JsonText& json, const ItemReport& report);

}  // namespace haunch
