// From where wood is looked at, and where a place of it stands on the view.
#pragma once

#include "line_view.h"
#include "polyhedron.h"

namespace haunch {

/// In the assembly's axes: what runs to the right and up on the view, one millimetre to the
/// millimetre, and towards whom it is looked at by. What lies along `towards` comes to one place.
struct Sight {
  Spot right, up, towards;
};

/// From the left: the viewer stands at the left of the work and has its front at his right hand.
enum class ViewedFrom : unsigned char { front, back, left, right, above, below };

Sight sight_from(ViewedFrom from);

/// Which corner of a box is nearest to the viewer.
struct NearCorner {
  bool right = true, above = true, front = true;
};

/// A slanted look for what is taken apart: upright stays upright, level lines rise or fall by 30°.
/// A millimetre along each of the three axes is a millimetre on the view.
Sight slanted_sight(const NearCorner& nearest);

/// Places in steps.
ViewSpot seen_at(const Sight& sight, const Spot& spot);
ViewSpot seen_at(const Sight& sight, const Triple& place);

}  // namespace haunch
