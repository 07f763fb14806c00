// What every plan for an order must come to: of whichever strips, layers and thicknesses its parts
// are made, and whatever the seed and effort.
#pragma once

#include <vector>

#include "lumber_report.h"

namespace haunch {

/// One way to make a part: from which stock, and its sizes.
struct LumberWay {
  lumber::StockThickness thickness;
  RoughPart rough;
};

/// Fills in `report.bounds`, of the parts that the plans place; `ways` are those of each part.
void bound_every_way(LumberReport& report, const std::vector<std::vector<LumberWay>>& ways,
                     const LumberWishes& wishes);

/// Where both plans cut the same pieces, what is proven for one holds for the other: the higher
/// bound is kept.
void raise_bound(MaterialPlan& plan, const MaterialPlan& other);

}  // namespace haunch
