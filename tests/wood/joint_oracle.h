// A second opinion on joints of every kind: by asking of points beside their faces
// whether there is wood.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "haunch/wood.h"

namespace haunch::test {

/// Whether a dowel stands where another dowel or tenon does, as far as blanks tell: a spec may ask
/// for that, and the checks find it.
bool dowels_meet_others(const Assembly& assembly);

struct PointFault {
  std::optional<std::size_t> joint;  // that it is of
  std::string_view check;            // else: the check that must see it; empty: none does
  std::string what;
};

/// What is wrong with the joints of an assembly, and with its wood where they are. The same seed
/// asks of the same points.
std::vector<PointFault> joint_faults(const Assembly& assembly, std::uint64_t seed);

/// What goes for every leaf, however its edges are worked: no wood is shared, and nothing is open
/// between its members close below the face and the back.
std::vector<PointFault> faults_to_be_seen(const Assembly& assembly, std::uint64_t seed);

}  // namespace haunch::test
