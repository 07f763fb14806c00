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
  std::string name;  // "left end"
  Prism shape;       // in the assembly's axes
};

/// What stands by a run's wood, as work() gives that.
struct Surroundings {
  std::vector<Boundary> boundaries;
  Length handle;  // how far what fronts are opened by stands before them
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

}  // namespace haunch
