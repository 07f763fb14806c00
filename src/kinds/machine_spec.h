// The machines of a shop file.
#pragma once

#include <string>
#include <vector>

#include "document.h"
#include "machine.h"
#include "spec.h"
#include "value_reader.h"

namespace haunch {

/// From the items of "machines", in their order.
std::vector<Machine> machines_of(const std::vector<KeyValues>& items);

/// Tells where the list that they were read from says what cannot be: two machines of one name, one
/// process twice, limits that nothing lies between, a datum that does not look there.
void check_machines(ValueReader& read, const Value& list, const std::vector<Machine>& machines,
                    const std::string& path);

}  // namespace haunch
