// What set-ups are made from: the items of an order, worked.
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <vector>

#include "assembly_order.h"
#include "glue_up.h"
#include "making.h"
#include "rough.h"

namespace haunch {

/// How a shop saws and mills: what it leaves on, and what it gives wood to come to rest.
struct MillingRule {
  lumber::Allowances allowances;
  lumber::StripRule strips;  // of panels: wider ones are glued up, so that they stay flat
  Length widest_board;       // that is to be had: all that is wider is glued up
  Length step_through;  // thicknesses over are whole numbers of it, all else of the strips' step
  int rest_days = 1;    // between first and second milling
};

/// 25, 6 and 2.5 mm a face over, or inches as much. Panels of strips to 150 mm, 6 in, all else of
/// boards to 250 mm, 10 in: what yards have in any number. A day's rest: the least that workshops
/// name, who give from a night to weeks.
MillingRule usual_milling(Unit unit);

/// One item of an order. What it points to outlives it.
struct SetupItem {
  const Assembly* wood = nullptr;
  const Making* making = nullptr;
  std::vector<GroupOrder> orders = {};  // how its groups are put together
  std::int64_t quantity = 1;
  MillingRule milling = {};
  /// How far off a dimension may come, where the shop says.
  std::array<std::optional<Length>, kDimensions> plus_minus = {};
  Length most_unequal;  // two faces of a panel may lose so much unequally
  Length loosest_fit;   // of a tenon in its mortise, both cheeks together
};

}  // namespace haunch
