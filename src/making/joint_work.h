// What is worked for joints: mortises, tenons, half-laps, holes for dowels.
#pragma once

#include "making.h"

namespace haunch {

void add_joint_work(Making& making, const Assembly& wood, std::size_t joint);

/// What is free for a tenon with square edges in a mortise of a joint whose ends a cutter of its
/// width, or of their radius, leaves round.
Length straight_length(const Joint& joint, const MortiseSpan& span);

}  // namespace haunch
