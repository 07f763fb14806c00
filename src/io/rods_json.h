// What 'haunch rod' says as JSON, format haunch-rod-1.
#pragma once

#include "rods_report.h"

namespace haunch {

std::string rods_json(const std::vector<ItemRods>& items, Unit unit);

}  // namespace haunch
