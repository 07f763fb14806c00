// Where doors stand when they are open, and drawers when they are out, dashed on a view.
#pragma once

#include "noted_view.h"
#include "section.h"

namespace haunch {

/// Of what a plane goes through.
void draw_movements(NotedView& view, const CutPlane& plane);

/// Of all that turns about an upright pin or comes out, seen from above; what stands above another
/// and moves alike once.
void draw_movements_from_above(NotedView& view);

}  // namespace haunch
