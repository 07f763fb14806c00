// Screw holes of metal runners, bored in what those are fixed to.
#pragma once

#include <string>
#include <vector>

#include "carcase_plan.h"
#include "haunch/wood.h"

namespace haunch {

/// Of one drawer, alike at both sides. Places are the cabinet's.
struct RunnerHoles {
  Length left, right;         // the faces that they are bored in
  Length height;              // of their row
  std::vector<Length> depth;  // of each middle, from the front to the back
  Length diameter;
};

/// Moves the packing beside the opening `sight` up or down, so that the holes come out in its
/// middle, or as near to that as the opening lets it.
void pack_behind(CarcasePlan& carcase, const Area& sight, const RunnerHoles& holes);

/// Bores them in the pieces of the case. What has no piece to be bored in is told: the side, "left"
/// or "right"; empty where all is well.
std::string bore_runner_holes(Assembly& cabinet, const std::string& drawer,
                              const RunnerHoles& holes);

}  // namespace haunch
