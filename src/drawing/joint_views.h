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

/// A joint taken apart, as far as what enters reaches in and a little more.
struct TakenApart {
  NearCorner nearest;              // from where both the mortise and the tenon are seen
  Box region;                      // what of the pieces is drawn, where they stand together
  std::vector<MovedPiece> pieces;  // also those that stay, by nothing
};

struct JointView {
  std::vector<std::size_t> joints;  // alike; the first is the one that is shown
  std::vector<std::size_t> pieces;  // what receives, what enters, then what holds the two together
  std::vector<std::size_t> in_sections;  // of which they are drawn: the groups of the two
  std::vector<CutAway> sections;
  TakenApart apart;
};

/// One for each different joint, in the order of their first ones; of one with wedges, pins,
/// dowels or the like one together with these. Left and right are alike. Nothing of what merely
/// lies on another, of screws, and of beads, which are shown with what they hold.
///
/// Sections go through the middle of what enters, of several tenons through the largest:
///   - through its width, where it has an end that is fitted between edges: how wide and how deep
///     it stands in the other;
///   - through its thickness, always: its cheeks and shoulders, a panel in its groove;
///   - across it, of tenons: how they fill their mortises.
std::vector<JointView> joint_views(const Assembly& assembly);

}  // namespace haunch
