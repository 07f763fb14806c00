// A picture as SVG whose user unit is a millimetre.
#pragma once

#include "picture.h"
#include "svg_text.h"

namespace haunch {

/// "12.35": a place on paper, to a hundredth of a millimetre.
std::string paper_figure(double mm);

/// Draws it with `zero` of the picture at that place of the paper, which runs down.
void draw_picture(SvgText& svg, const Picture& picture, ViewSpot zero);

}  // namespace haunch
