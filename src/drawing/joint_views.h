// What shows each different joint of an assembly best: where to cut it, and how to take it apart.
#pragma once

#include <cstddef>
#include <vector>

#include "section.h"

namespace haunch {

/// A piece drawn away from its place.
struct MovedPiece {
  std::size_t piece = 0;
  Triple by;
};

/// A joint taken apart along its own axis, as far as what enters reaches in and a little more.
struct TakenApart {
  NearCorner nearest;              // from where both the mortise and the tenon are seen
  Box region;                      // what of the pieces is drawn, where they stand together
  std::vector<MovedPiece> pieces;  // also those that stay, by nothing
};

struct JointView {
  std::vector<std::size_t> joints;  // alike; the first is the one that is shown
  std::vector<std::size_t> pieces;  // that have a part in it
  std::vector<CutAway> sections;    // along what enters first, then across it
  TakenApart apart;
};

/// One for each different joint, in the order of their first ones. Left and right are alike.
std::vector<JointView> joint_views(const Assembly& assembly);

}  // namespace haunch
