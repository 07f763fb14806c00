#include "glue_up.h"

#include <algorithm>

namespace haunch::lumber {

namespace {

/// Jointed on both edges.
Length jointed_width(Length wanted, std::size_t count) {
  const auto strips = static_cast<std::int64_t>(count);
  const Length even = floor_divide(wanted, strips);
  return even * strips < wanted ? even + Length::from_steps(1) : even;
}

}  // namespace

StripRule usual_strips(Unit unit) {
  if (unit == Unit::inch)
    return {Length::from_inch_parts(6), Length::from_inch_parts(1, 8),
            Length::from_inch_parts(1, 16)};
  return {Length::from_mm(150), Length::from_mm(3), Length::from_mm(1)};
}

Length strip_width(Length wanted, std::size_t count, const StripRule& rule) {
  return -floor_multiple(-(jointed_width(wanted, count) + rule.jointing * 2), rule.step);
}

std::optional<Strips> strips_for(Length wanted, const StripRule& rule, Length widest_stock) {
  constexpr std::size_t kMostStrips = 100;
  const Length widest = std::min(rule.widest, widest_stock - rule.jointing * 2);
  if (widest <= Length()) return {};
  for (std::size_t count = 1; count <= kMostStrips; ++count) {
    const Length width = strip_width(wanted, count, rule);
    if (jointed_width(wanted, count) <= widest && width <= widest_stock)
      return Strips{count, width};
  }
  return {};
}

}  // namespace haunch::lumber
