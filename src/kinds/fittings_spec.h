// Fittings that a spec describes by what is cut for them, and hinges that it places one by one.
#pragma once

#include <string>
#include <vector>

#include "document.h"
#include "spec.h"
#include "value_reader.h"

namespace haunch {

/// From the items of "fittings" and "hinges.at".
std::vector<FittingSpec> fittings_of(const std::vector<KeyValues>& items);
std::vector<HingePlace> hinge_places_of(const std::vector<KeyValues>& items);

/// Tells where a recess, as it is written and as it was read, is neither a box nor a hole, or as
/// deep as it is through.
void check_recess(ValueReader& read, const Value& recess, const KeyValues& item,
                  const std::string& path);

}  // namespace haunch
