// A worked side of a piece, drawn at full size.
#pragma once

#include <string>

#include "face_view.h"
#include "report.h"

namespace haunch {

/// Black strokes alone, a user unit being a millimetre: the side's outline, a group for each
/// feature, the corner that places are told from and the stop.
std::string face_svg(const ItemReport& item, const Piece& piece, const FaceView& view);

}  // namespace haunch
