// Lines of a view that lie on each other become one.
#pragma once

#include <vector>

#include "line_view.h"

namespace haunch {

/// No two of them lie on each other. What lies under others is left out: hidden lines under all
/// others, broken ones under what is cut or seen, seen ones under what is cut. Of two alike that of
/// the first piece stays whole, of hidden ones that of the last: pieces that stand in others come
/// after these, so that it is a tenon's line and not its mortise's.
std::vector<ViewLine> summed(const std::vector<ViewLine>& lines);

}  // namespace haunch
