#include "share.h"

namespace haunch {

std::vector<Length> share_evenly(Length total, std::size_t parts) {
  const Length each = floor_divide(total, static_cast<std::int64_t>(parts));
  const auto odd_steps =
      static_cast<std::size_t>((total - each * static_cast<std::int64_t>(parts)).steps());
  std::vector<Length> shares(parts, each);
  for (std::size_t i = parts - odd_steps; i < parts; ++i)
    shares[i] += Length::from_steps(1);
  return shares;
}

}  // namespace haunch
