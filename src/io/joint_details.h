// The joints of an item, each different one once: cut through, with the figures that are cut by,
// and taken apart.
#pragma once

#include <string>
#include <vector>

#include "joint_views.h"
#include "report.h"
#include "sheet_layout.h"
#include "whole_views.h"

namespace haunch {

/// Sections of joints by their letters, in their order.
struct LetteredJoint {
  JointView view;
  std::vector<LetteredCut> cuts;
};

/// One block a joint, none larger than `room`.
std::vector<SheetBlock> joint_details(const ItemReport& item, const std::vector<DrawnWood>& woods,
                                      const std::vector<LetteredJoint>& joints,
                                      const LengthPrinter& lengths, const Extent& room);

}  // namespace haunch
