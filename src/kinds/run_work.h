// A run as the rooms above see it: besides a job, what it takes and what stands by it.
#pragma once

#include <string>
#include <vector>

#include "along_wall.h"
#include "haunch/wood.h"
#include "kind.h"

namespace haunch {

/// What stands by the work and is none of it, where nothing may stand or move to: a wall, a machine
/// that has its place in a row.
struct Boundary {
  std::string name;   // "left end"
  Prism shape;        // in the assembly's axes
  bool open = false;  // a wall in a corner, where what is left before it does not show
};

/// The wall that a run stands along, where it is shortest, and its ends, in the assembly's axes.
struct WallPlanes {
  Length left, right, back;
  Length level;  // that the cases stand on
};

/// Another run, which goes through to the wall in a corner at an end of this one.
struct ThroughRun {
  std::string name;
  Assembly wood;  // in its own axes
  WallPlanes planes;
  Length handle;
  bool at_right = false;  // at this one's right end
};

/// What stands by a run's wood, as work() gives that.
struct Surroundings {
  std::vector<Boundary> boundaries;
  Length handle;  // how far what fronts are opened by stands before them
  WallPlanes planes = {};
  std::vector<ThroughRun> corners = {};
};

class RunWork : public Job {
 public:
  std::vector<std::string> takes;  // ids of the items that are a part of it, as often as they are

  virtual Surroundings surroundings() const = 0;
  /// Of a job that works without problems.
  virtual AlongWall along_wall() const = 0;
};

/// Of a job that is a run; else null.
inline const RunWork* as_run(const Job& job) {
  return dynamic_cast<const RunWork*>(&job);
}

/// Where the axes of a run that goes through lie in those of one with such planes: turned by a
/// right angle, its wall where that one's end is.
Place place_in_corner(const ThroughRun& through, const WallPlanes& planes);

}  // namespace haunch
