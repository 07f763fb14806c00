#include "mates.h"

#include <algorithm>

namespace haunch {

std::vector<Mate> mates_of(const Assembly& wood, std::size_t piece) {
  std::vector<Mate> mates;
  for (std::size_t number = 0; number < wood.joints.size(); ++number) {
    const Joint& joint = wood.joints[number];
    if (joint.receives != piece && joint.enters != piece) continue;
    const std::size_t other = joint.receives == piece ? joint.enters : joint.receives;
    const auto known = std::find_if(mates.begin(), mates.end(), [&](const Mate& it) {
      return it.piece == other && it.kind == joint.kind;
    });
    if (known != mates.end())
      known->joints.push_back(number);
    else
      mates.push_back({other, joint.kind, {number}});
  }
  return mates;
}

}  // namespace haunch
