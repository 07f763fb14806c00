// Where sections are cut, on a view that shows their planes or what they are drawn of.
#pragma once

#include <string>

#include "noted_view.h"
#include "section.h"

namespace haunch {

/// A section that is drawn on its own, by the letter that tells of it.
struct LetteredCut {
  std::string letter;  // "a"; pieces have capital ones
  CutAway cut;
};

/// Of one whose plane stands on edge on the view a chain line, at whose thick ends short ones turn
/// the way it is looked at; of one that lies in the view a chain line round its region. `room` is
/// all that there is.
void mark_cut(NotedView& view, const LetteredCut& cut, const Box& room);

}  // namespace haunch
