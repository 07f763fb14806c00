// How much wood is to be sanded and finished.
#pragma once

#include "area.h"
#include "finish_spec.h"
#include "haunch/wood.h"

namespace haunch {

/// The surface of wood and board that is seen or felt: of the blanks as they stand put together,
/// without what lies against other pieces or within them. So a rail counts from shoulder to
/// shoulder and a panel as far as its grooves let it be seen, both faces and the edges of the whole
/// once each, of a case the inside too. Mouldings, raised fields and curves count as the box that
/// they are cut from.
/// Where only the front is coated, without faces that look back.
lumber::Area seen_surface(const Assembly& wood, FinishedFaces faces = FinishedFaces::both);

}  // namespace haunch
