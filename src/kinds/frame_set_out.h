// From a frame's settled sizes to its wood.
#pragma once

#include "frame_plan.h"
#include "haunch/wood.h"

namespace haunch {

// The jambs, by their numbers among the pieces.
inline constexpr std::size_t kLeftJamb = 0, kRightJamb = 1;

/// The frame alone, without its leaf.
Assembly set_out_frame(const CasePlan& plan);

/// What is open through a frame: where the leaf hangs, the light above a transom, and between horns
/// of the jambs above the head.
std::vector<Box> open_rooms(const CasePlan& plan);

/// The same once its leaves are hung: below them, instead of where they hang.
std::vector<Box> open_beside_leaves(const CasePlan& plan);

}  // namespace haunch
