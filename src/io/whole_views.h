// What shows the whole of an item: its elevation, and where it goes back from its front sections
// level and upright through it.
#pragma once

#include <string>
#include <vector>

#include "noted_view.h"
#include "report.h"
#include "section.h"

namespace haunch {

/// A section that is drawn on its own, by the letter that tells of it.
struct LetteredCut {
  std::string letter;  // "a"; pieces have capital ones
  CutAway cut;
};

struct WholeView {
  std::string letter;  // of a section
  std::string title;
  Picture picture;
};

/// All of them at one scale, the elevation first, with the places of those sections.
std::vector<WholeView> whole_views(const ItemReport& item, const std::vector<DrawnWood>& woods,
                                   const std::vector<LetteredCut>& cuts, PaperScale scale,
                                   const LengthPrinter& lengths);

/// Level and upright through the middle of what goes back from its front; of a leaf none.
std::vector<LetteredCut> whole_cuts(const ItemReport& item);

}  // namespace haunch
