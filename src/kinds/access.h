// The way by which work gets to where it stands.
#pragma once

#include <optional>

#include "haunch/length.h"

namespace haunch {

struct DoorOnTheWay {
  Length width, height;  // clear
};

/// A stair that turns on a landing.
struct StairOnTheWay {
  Length width;     // clear, of both flights
  Length landing;   // how deep it is, from the flight that comes up to the wall
  Length headroom;  // over the landing
};

struct LiftOnTheWay {
  Length width, depth, height;  // of its car, within
};

struct Access {
  std::optional<DoorOnTheWay> door;
  std::optional<StairOnTheWay> stair;
  std::optional<LiftOnTheWay> lift;
  std::optional<double> carry;  // kg that those who carry may lift together
};

}  // namespace haunch
