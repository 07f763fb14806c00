// Cautions that more than one kind of work tells of.
#pragma once

#include <vector>

#include "kind.h"

namespace haunch {

/// Of readings of an opening whose second diagonal would have to be so much longer, or if less than
/// 0 shorter, to go with the others.
Caution opening_disagrees(Length diagonal_short, Unit unit);

/// Puts more cautions to those that are told, but what they tell of already.
void add_untold(std::vector<Caution>& all, std::vector<Caution> more);

/// Of work in a building that stands.
Caution old_paint();

/// ", 48 mm short", of a figure under what is asked for.
std::string short_of(Length has, Length asked, Unit unit);

}  // namespace haunch
