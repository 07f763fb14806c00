// Tenons, those of rails, muntins and frames and loose ones, as they are cut and marked.
#pragma once

#include <string>

#include "making.h"
#include "text_table.h"

namespace haunch {

// Each is empty where there are none.
std::string tenon_page(const Assembly& wood, const Making& making, const LengthPrinter& lengths);
std::string loose_tenon_page(const Assembly& wood, const LengthPrinter& lengths);

}  // namespace haunch
