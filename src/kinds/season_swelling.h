// What a single piece does with its moisture.
#pragma once

#include "season.h"
#include "swelling.h"

namespace haunch {

/// Of a piece that was built at season.moisture.build, when its wood has come to `percent`.
Swelling swelling_at(const Piece& piece, const Season& season, double percent);

}  // namespace haunch
