// The marks of pieces on a view of them, and which way their grain runs.
#pragma once

#include "noted_view.h"
#include "section.h"

namespace haunch {

/// Letters every piece that is met on a view where it is met: in it where there is room, else
/// beside it with a line to it. `lines` are those of the view; of an elevation none need be told.
void mark_pieces(NotedView& view, const CutAway& cut, const LineView& lines);

/// Of all that are met those alone that are of no group within the whole.
void mark_pieces_of_whole(NotedView& view, const CutAway& cut);

}  // namespace haunch
