// Wood cut by a plane square to an axis, and what is seen beyond it.
#pragma once

#include <optional>
#include <span>

#include "projection.h"

namespace haunch {

/// A plane, and which way it is looked through. What stands before it is taken away.
struct CutPlane {
  Axis across = Axis::z;
  Length at;
  bool looks_upwards = true;  // towards higher figures
};

struct CutAway {
  CutPlane plane;
  std::optional<Box> region = {};  // nothing beside or beyond it is drawn
};

Sight sight_of(const CutPlane& plane);

/// Where the plane lies in a face of wood, that wood is cut which lies beyond it; what ends there
/// is taken away whole. So the cut areas are always those of the wood a hair beyond the plane.
LineView section_of(std::span<const DrawnWood> woods, const CutAway& cut,
                    HiddenLines hidden = HiddenLines::left_out);

}  // namespace haunch
