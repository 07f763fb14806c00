// A piece as it lies on the bench, by itself: how it is drawn and modelled alone.
#pragma once

#include "datum.h"

namespace haunch {

/// Its place in axes of its own: x along its length from the low end of it, z up through its
/// thickness to its face side, y across, all from zero. These axes are right-handed, which those of
/// an assembly are not (there z goes away from who looks at x to the right and y up): so that wood
/// comes out as it is, and never as its mirror image.
Place on_bench(const Piece& piece);

}  // namespace haunch
