// What is fitted to work by name, and what is hung.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "bought_fitting.h"
#include "haunch/wood.h"

namespace haunch {

/// "hinges with flaps 100 mm", "lock": by the name that a rates file is asked for.
struct FittedGoods {
  std::string name;
  std::int64_t number = 0;
  bool by_hand = true;  // let in or screwed on one by one; dowels are glued, pins pushed in
  std::optional<FittingUse> use = {};  // of what a shop's list can have
};

/// To one item: what is bought by number, as hardware_of() counts it, and locks, bolts and other
/// things that are let in.
std::vector<FittedGoods> fitted_to(const Assembly& wood);

/// Leaves and drawers of one item that move, or have hinges.
struct HungGroup {
  GroupKind kind = GroupKind::leaf;
  bool in_wall = false;  // in an opening on site
  std::int64_t number = 0;
};
std::vector<HungGroup> hung_in(const Assembly& wood);

}  // namespace haunch
