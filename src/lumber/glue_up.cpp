#include "glue_up.h"

#include <algorithm>

namespace haunch::lumber {

std::optional<Strips> strips_for(Length wanted, const StripRule& rule, Length widest_stock) {
  constexpr std::int64_t kMostStrips = 100;
  const Length both_edges = rule.jointing * 2;
  const Length widest = std::min(rule.widest, widest_stock - both_edges);
  if (widest <= Length()) return {};
  for (std::int64_t count = 1; count <= kMostStrips; ++count) {
    Length jointed = floor_divide(wanted, count);
    if (jointed * count < wanted) jointed += Length::from_steps(1);
    const Length width = -floor_multiple(-(jointed + both_edges), rule.step);
    if (jointed <= widest && width <= widest_stock)
      return Strips{static_cast<std::size_t>(count), width};
  }
  return {};
}

}  // namespace haunch::lumber
