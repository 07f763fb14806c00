// Dowels, half-laps, mitres and wedges, as they are bored, cut and driven.
#pragma once

#include <string>

#include "making.h"
#include "text_table.h"

namespace haunch {

// Each is empty where there are none.
std::string hole_page(const Assembly& wood, const Making& making, const LengthPrinter& lengths);
std::string lap_page(const Assembly& wood, const Making& making, const LengthPrinter& lengths);
std::string mitre_page(const Assembly& wood, const LengthPrinter& lengths);
std::string wedge_page(const Assembly& wood, const LengthPrinter& lengths);

}  // namespace haunch
