// Takings-off: how much stock an order comes to before anything is planned.
#pragma once

#include <cstdint>

#include "area.h"
#include "haunch/length.h"

namespace haunch::lumber {

/// What is lost, in percent: of what is bought, or added to what is needed.
struct WasteRule {
  int percent = 30;  // under 100 of what is bought
  bool of_bought = true;
};

/// What must be bought to have `needed`.
double to_buy(double needed, const WasteRule& rule);

/// Rough parts of one thickness, added up.
struct Taking {
  std::int64_t pieces = 0;
  Area area;

  void add(Length length, Length width) {
    ++pieces;
    area += area_of(length, width);
  }
};

double cubic_metres(Area area, Length thickness);
/// 144 cubic inches each; stock under 1 in. counts as 1 in., as the retail trade has it.
double board_feet(Area area, Length nominal_thickness);
double square_metres(Area area);

}  // namespace haunch::lumber
