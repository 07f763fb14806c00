// Random cabinets, face frames and drawers for property tests: the same seed gives the same spec on
// every machine.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "haunch/length_text.h"

namespace haunch::test {

/// A spec as a joiner might write it, and what of the work can be told from it by counting.
struct CabinetDraw {
  std::string json;
  Unit unit = Unit::mm;
  std::string_view kind;  // "cabinet", "face-frame", "drawer"
  bool framed = false;
  bool graded = false;
  std::string stuff;  // the case's thickness as it is written; empty: not said
  int doors = 0;      // leaves, two of a pair
  int drawers = 0;
  int plain_fronts = 0;
  int loose_shelves = 0;
};

CabinetDraw random_cabinet(std::uint64_t seed);

/// The same spec with the case's stuff so thick.
std::string with_stuff(const CabinetDraw& draw, const std::string& thickness);

}  // namespace haunch::test
