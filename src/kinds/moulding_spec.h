// A shop's own mouldings, as a spec or a shop file draws them.
#pragma once

#include <string>
#include <vector>

#include "document.h"
#include "edge.h"
#include "spec.h"
#include "value_reader.h"

namespace haunch {

/// From the items of "mouldings", in their order. They have been found right.
std::vector<OwnMoulding> mouldings_of(const std::vector<KeyValues>& items);

/// Tells where the list that they were read from draws what cannot be: an outline that does not go
/// from the face to the sight edge, or back under itself, an arc that does not reach; two of one
/// name.
void check_mouldings(ValueReader& read, const std::vector<KeyValues>& items,
                     const std::string& path);

}  // namespace haunch
