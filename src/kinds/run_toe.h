// One toe board before all cases of a run.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "haunch/wood.h"

namespace haunch {

class Ledger;
struct Caution;
struct RunSpec;
struct WallRunPlan;

/// How far the floor lies below the level that the cases stand on, at a place along the wall.
struct FloorBelow {
  Length at, below;
};

struct ToeBoardPlan {
  Length left, right;            // along the wall
  Length top;                    // above the level that the cases stand on
  Length set_back;               // its face, behind the front of the deepest case
  Length thickness;              // as the first one's in whose place it is
  std::vector<FloorBelow> foot;  // at its ends, and where the floor was read between them
  Length below;                  // the most of these
  std::string material;          // as the first one's; empty: that of the species
  Matter matter = Matter::wood;
};

/// The board that the spec asks for, before cases that were placed.
std::optional<ToeBoardPlan> plan_toe_board(const RunSpec& spec, const WallRunPlan& plan,
                                           Ledger& ledger);

/// A cabinet's own board in whose place it is; none where it has no such board.
std::optional<std::size_t> own_toe_board(const Assembly& cabinet);

/// How high a cabinet's own board is seen: one that stands between the sides goes up behind a face
/// frame, and the sides are cut out before it no higher than the frame's foot.
Length seen_height(const Assembly& cabinet, std::size_t board);

/// Leaves one piece out, with its joints and what was cut for them alone.
void leave_out(Assembly& wood, std::size_t piece);

/// Adds it, its foot planed to the floor. `zero`: where the assembly's is along the wall, above the
/// level that the cases stand on and behind the front of the deepest.
void add_toe_board(Assembly& wood, const ToeBoardPlan& board, const Triple& zero);

std::optional<Caution> toe_caution(const WallRunPlan& plan, const RunSpec& spec);

}  // namespace haunch
