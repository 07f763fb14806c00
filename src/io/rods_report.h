// The rods of one item: the model that their page, JSON, CSV and drawing are views of.
#pragma once

#include <string>
#include <vector>

#include "haunch/length_text.h"
#include "report.h"
#include "rod.h"

namespace haunch {

struct ItemRods {
  std::string id, name;
  Unit unit = Unit::mm;  // of its spec
  Assembly wood;
  std::vector<Rod> rods;
};

/// Of the height and the width; of what goes back from its front of the depth too. Of a run those
/// along its wall, then of each of its cabinets. The report has its making.
ItemRods rods_of(ItemReport item);

/// "till: height rod"
std::string rod_name(const Rod& rod);

/// "door stiles", or where nothing else on the rod has any: "stiles"; of one piece "bottom".
std::string strip_name(const Rod& rod, std::size_t strip);

/// "lock rail D", "stiles A B"
std::string pieces_text(const ItemRods& item, const Rod& rod, const RodName& name);

/// "mortise begins, takes E"
std::string what_text(const ItemRods& item, const RodName& name);

/// All that stands at a mark: "stiles A B: lower end; bottom rail E: lower edge".
std::string mark_text(const ItemRods& item, const Rod& rod, const RodMark& mark);

}  // namespace haunch
