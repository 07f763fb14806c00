// The worktop over the cases of a run.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "haunch/wood.h"

namespace haunch {

class Ledger;
struct Caution;
struct Chain;
struct RunSpec;
struct WallRunPlan;

/// What is cut out of a worktop, right through it.
struct WorktopCutout {
  std::string over;                            // the cabinet in whose middle it is: "sink"
  Length from_left, from_front, width, depth;  // of the worktop's left end and front edge
};

/// From one end of a run to the other.
struct WorktopPlan {
  Length left, right;  // along the wall, from its left end where that is shortest
  Length low;          // its underside, on the cases
  Length thickness, depth;
  Length before;  // how far it stands over the deepest case's front
  bool at_left_wall = false, at_right_wall = false;
  std::string material;
  std::vector<WorktopCutout> cutouts;

  Length length() const { return right - left; }
};

/// The worktop that the spec asks for, over cases that were placed.
std::optional<WorktopPlan> plan_worktop(const RunSpec& spec, const WallRunPlan& plan,
                                        Ledger& ledger);

/// Its piece. `zero`: where the assembly's is along the wall, above the level that the cases stand
/// on and behind the front of the deepest.
void add_worktop(Assembly& wood, const WorktopPlan& worktop, const Triple& zero);

/// Where its cut-outs are marked: along it from the left end, and from its front edge.
std::vector<Chain> worktop_chains(const WorktopPlan& worktop);

std::optional<Caution> worktop_caution(const WallRunPlan& plan, const RunSpec& spec);

}  // namespace haunch
