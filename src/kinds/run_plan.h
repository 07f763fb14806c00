// A run with every size settled: the wall, what stands along it, and the floor below it.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "planned.h"
#include "run_corner.h"
#include "run_frame.h"
#include "run_keys.h"
#include "run_spec.h"
#include "run_toe.h"
#include "run_worktop.h"

namespace haunch {

/// How long the wall is at a height above the floor's highest point.
struct WallReading {
  Length at, length;
};

/// The wall that a run stands along, as it was measured.
struct RunWall {
  std::vector<WallReading> readings;  // rising
  RunEnd left = RunEnd::wall, right = RunEnd::wall;
  bool out_at_right = true;  // the end that is not plumb
  Length least;              // of its lengths

  /// Where it is fixed first: in a corner, else at the end that is plumb.
  bool begins_at_left() const;
  /// At any height: in a straight line between two readings, beyond the outer ones as there.
  Length length_at(Length height) const;
  /// How far the end that is out stands back there, from where the wall is shortest.
  Length back_at(Length height) const { return length_at(height) - least; }
  /// The least of it from one height to another.
  Length least_back(Length low, Length high) const;
};

/// One that stands in a run, as it was placed.
struct RunMember {
  RunEntry::What what = RunEntry::What::cabinet;
  std::optional<std::size_t> entry;  // in the spec's order; none of what that does not name
  std::string name;                  // "b1", "filler 1", "gap for the oven"
  std::string path;                  // of a cabinet's group: "b1-2"
  Length left, width;                // where the wall is shortest
  bool at_left_wall = false, at_right_wall = false;
  bool in_corner = false;  // of a filler: beside the run that goes through there

  Length right() const { return left + width; }
};

/// How high the floor lies at a place along the wall.
struct FloorReading {
  Length at, rise;
};

struct WallRunPlan {
  RunWall wall;
  std::vector<FloorReading> floor;                      // none: it is taken to be level
  std::vector<RunMember> members;                       // from the left
  std::array<std::optional<RunCornerPlan>, 2> corners;  // at its left, its right
  Length spare_left, spare_right;  // left open beside a wall; less than 0: what is too long
  Length between, scribe, handle;
  Length behind;  // between the backs of the cases and the wall
  Length filler_thickness;
  std::string filler_material, end_panel_material;
  Triple size;  // of the cases and what is beside them
  std::optional<WorktopPlan> worktop;
  std::optional<ToeBoardPlan> toe;
  std::vector<RunFramePart> frames;

  /// What stands in the corner at an end, from the wall there.
  Length in_corner(bool right) const {
    const auto& corner = corners[right ? 1 : 0];
    return corner ? corner->cases : Length();
  }
  /// How far the floor lies below its highest point there, which is what is packed.
  Length packed_at(Length along) const;
};

using PlannedRun = Planned<WallRunPlan>;

/// Settles every size; the cabinets that the spec names are worked for it.
PlannedRun plan_run(const RunSpec& spec);

}  // namespace haunch
