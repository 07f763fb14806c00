// What 'haunch rod' says as CSV, a row a mark.
#pragma once

#include "rods_report.h"
#include "view.h"

namespace haunch {

std::string rods_csv(const std::vector<ItemRods>& items, Unit unit, CsvProfile profile);

}  // namespace haunch
