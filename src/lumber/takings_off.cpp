#include "takings_off.h"

#include <algorithm>

namespace haunch::lumber {
namespace {

constexpr double kMillimetresInInch = 25.4;

double millimetres(Length length) {
  return static_cast<double>(length.steps()) / static_cast<double>(Length::kStepsPerMm);
}

}  // namespace

double to_buy(double needed, const WasteRule& rule) {
  constexpr double kWhole = 100;
  const double share = rule.percent / kWhole;
  return rule.of_bought ? needed / (1 - share) : needed * (1 + share);
}

double cubic_metres(Area area, Length thickness) {
  constexpr double kCubicMillimetres = 1e9;
  return square_mm(area) * millimetres(thickness) / kCubicMillimetres;
}

double board_feet(Area area, Length nominal_thickness) {
  constexpr double kCubicInches = 144;
  const double inches = std::max(1.0, millimetres(nominal_thickness) / kMillimetresInInch);
  return square_mm(area) / (kMillimetresInInch * kMillimetresInInch) * inches / kCubicInches;
}

double square_metres(Area area) {
  constexpr double kSquareMillimetres = 1e6;
  return square_mm(area) / kSquareMillimetres;
}

}  // namespace haunch::lumber
