// How far off a shop's cuts may come, and which fits it takes.
#pragma once

#include <array>
#include <cstddef>

#include "haunch/measure.h"

namespace haunch {

/// How a shop cuts its joints.
enum class Work : unsigned char { hand, router, nc };

struct Tolerance {
  Length plus_minus;
  bool one_setting = false;  // all of an item's are cut at one setting, and share its error
};

/// The play of both cheeks together that a joint may have, both ends included. Tighter will not go
/// home, looser is glue-starved.
struct FitBand {
  Length min, max;
};

struct Tolerances {
  Work work = Work::router;
  std::array<Tolerance, kDimensions> each;
  FitBand fit;
  int deviations = 3;      // standard deviations that a plus/minus stands for, from 1
  int setting_share = 50;  // percent, 0 to 90: how much of the variance of what is cut at one
                           // setting is the setting's
  int wanted_share = 95;   // percent of leaves, 1 to 99

  const Tolerance& of(Dimension dimension) const {
    return each[static_cast<std::size_t>(dimension)];
  }
};

}  // namespace haunch
