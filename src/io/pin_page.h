// Pins through tenons, as they are bored and driven.
#pragma once

#include <string>

#include "making.h"
#include "text_table.h"

namespace haunch {

/// The holes in cheeks and tenons, piece by piece, and the pins; empty where there are none.
std::string pin_page(const Assembly& wood, const Making& making, const LengthPrinter& lengths);

}  // namespace haunch
