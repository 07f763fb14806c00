// In which order set-ups are run, so that machines are changed as seldom as can be.
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

namespace haunch {

/// A set-up as far as its order goes.
struct Stop {
  std::size_t machine = 0;
  std::size_t cutter = 0;
  std::vector<std::size_t> after;  // other stops, none of which waits for this one
};

struct Sequence {
  std::vector<std::size_t> order;
  std::size_t stays = 0;   // how often a machine is come to
  bool is_fewest = false;  // no order has fewer stays
};

/// All orders in which each stay at a machine takes whatever can be done there are searched stay by
/// stay, the best kStates of them kept. Where more are met it is not known to be the fewest, unless
/// each machine is come to once.
inline constexpr std::size_t kStates = 64;
Sequence fewest_stays(const std::vector<Stop>& stops);

}  // namespace haunch
