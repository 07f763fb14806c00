// Where on a piece a set-up works it: its sides, and places along them.
#pragma once

#include <string>
#include <vector>

#include "setups_report.h"

namespace haunch {

/// What is worked of a piece at one of its sides, told from one line.
struct PlacesTold {
  std::string worked;  // "face edge", "left end, both faces"
  std::string zero;    // "foot, to the left": the line, and where it is at the machine
  std::string places;  // "76.6 to 129.9, 164.1 to 217.4 twice"
};
std::vector<PlacesTold> places_of(const SetupsReport& report, const Setup& setup,
                                  const SetupPiece& piece, const LengthPrinter& lengths);

}  // namespace haunch
