// Reading fittings that a spec describes by what is cut for them, and hinges that it places one by
// one.
#pragma once

#include <string>
#include <vector>

#include "document.h"
#include "spec.h"
#include "value_reader.h"

namespace haunch {

/// Reads the values of "fittings" and "hinges.at". What can't be read is left out.
std::vector<FittingSpec> read_fittings(ValueReader& read, const Value& value,
                                       const std::string& path);
std::vector<HingePlace> read_hinge_places(ValueReader& read, const Value& value,
                                          const std::string& path, int most);

}  // namespace haunch
