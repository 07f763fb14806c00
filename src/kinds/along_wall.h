// What stands along a wall that was measured, for those who show it: as it lies in the axes of the
// work, in the words of the sheet.
#pragma once

#include <string>
#include <vector>

#include "kind.h"

namespace haunch {

/// A cabinet that a run has taken, as it was worked for itself.
struct TakenPart {
  std::string path;  // of its group: "till-2"
  Box room;          // its own zero and its far corner
  std::vector<Chain> chains;
  std::vector<NamedRoom> rooms;
};

/// One after the other from the left, where the wall is shortest.
struct AlongStand {
  enum class What : unsigned char { cabinet, gap, corner, other };

  What what = What::other;
  std::string name;  // "till", "filler 1"; of a gap what is put in it: "oven", or nothing; of a
                     // corner the run that goes through there
  Length low, high;
  Length foot, top;  // of all but others
  TakenPart part;    // of a cabinet
};

/// A length that was measured, and where the wall's two ends are there.
struct MeasuredWall {
  Length at;      // above the floor's highest point
  Length height;  // the same in the work
  Length length;
  Length left, right;
};

struct FloorPlace {
  Length along, height;
  Length fall;   // below its highest point
  bool is_read;  // else it is where the wall ends
};

struct AlongWall {
  std::vector<AlongStand> stands;
  std::vector<MeasuredWall> measured;  // rising; never empty
  std::size_t shortest = 0;            // of them
  bool left_wall = false, right_wall = false;
  std::vector<FloorPlace> floor;  // from the left, with both ends; none: it is taken to be level
  Length level;                   // that the cases stand on
  Length back;                    // of the work's depth: the wall's face
  bool fixed_from_left = true;
  std::vector<std::string> cutouts;  // of a worktop in the order of its feature: "sink"

  const MeasuredWall& shortest_wall() const { return measured[shortest]; }
};

/// Turned about in work that is so wide: it is its own handed twin's. `paths`: of the twin's
/// groups.
AlongWall turned_about(AlongWall along, Length width, const std::vector<std::string>& paths);

}  // namespace haunch
