// A view of wood as a picture, at a scale: its lines, and what it cuts through hatched.
#pragma once

#include "haunch/wood.h"
#include "picture.h"

namespace haunch {

/// 1 : 10 of what it shows.
struct PaperScale {
  int one_to = 1;

  double on_paper(double mm) const { return mm / one_to; }
  ViewSpot on_paper(const ViewSpot& spot) const { return {spot.u / one_to, spot.v / one_to}; }
};

/// "1:10"
std::string scale_text(PaperScale scale);

/// Zero of the view is that of the picture.
Picture picture_of(const LineView& view, const Assembly& wood, PaperScale scale);

/// What a section cuts through, as hatching shows it.
enum class Shown : unsigned char { end_grain, long_grain, board, glass };

/// The hatching alone, for a legend.
Picture hatching_of(const std::vector<SpotRun>& loops, Shown shown, ViewSpot grain,
                    bool leans_left);

}  // namespace haunch
