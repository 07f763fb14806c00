// The kind of work `cabinet`: a case, the frame before it, and what closes its openings.
#pragma once

#include <memory>
#include <string_view>

#include "document.h"
#include "kind.h"

namespace haunch {

struct CabinetSpec;

JobReading read_cabinet(const Value& item, const ShopDefaults* shop, std::string_view default_id);

/// Of a cabinet that is worked as it is written; of any other work, and of a twin, null.
const CabinetSpec* spec_of_cabinet(const Job& job);

/// The same cabinet with another spec; of what spec_of_cabinet() tells null of a std::bad_cast.
std::unique_ptr<Job> with_spec(const Job& cabinet, CabinetSpec spec);

}  // namespace haunch
