// What is to be done to one piece at one setting: the least that set-ups are put together from.
#pragma once

#include <cstddef>
#include <vector>

#include "haunch/wood.h"
#include "machine.h"
#include "operation.h"

namespace haunch {

/// Which item of the order a piece is of, and which of its pieces it is.
struct PieceOf {
  std::size_t item = 0;
  std::size_t piece = 0;

  friend auto operator<=>(const PieceOf&, const PieceOf&) = default;
};

struct Task {
  PieceOf of;
  Process process = Process::groove;
  /// What of its piece it makes, by index into the piece's features; of sawing and milling nothing.
  std::vector<std::size_t> features;
  /// What it makes more of that another task makes first, as the second cheek of a tenon.
  std::vector<std::size_t> goes_on_with;
  Operation setting = {};  // its runs are those of this piece
  Triple size = {};        // of the piece as it comes to the machine

  /// Where the work comes in; of sawing and milling, that has no runs, nothing to speak of.
  WorkedSide side() const {
    return setting.runs.empty() ? WorkedSide() : setting.runs.front().side;
  }
};

}  // namespace haunch
