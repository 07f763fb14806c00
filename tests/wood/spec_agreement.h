// Does the wood say what the spec said? Each figure that a spec gives, looked for in the assembly.
#pragma once

#include <string>
#include <vector>

#include "haunch/wood.h"
#include "random_spec.h"

namespace haunch::test {

/// Every given figure that the assembly does not show; keys left out are not judged. Written from
/// the design alone.
std::vector<std::string> disagreements(const DoorSpec& spec, const Assembly& assembly);

}  // namespace haunch::test
