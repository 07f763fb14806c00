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

/// Where in the making of a piece a task stands. The order is that in which they come.
enum class Step : unsigned char {
  length_over,
  width_over,
  face_and_edge_over,
  thickness_over,  // then it rests
  boards_together,
  face_and_edge,
  thickness,
  width,
  length,
  sheet,
  strips,
  cut,  // joints, edges, holes
  together,
  fitting,  // on what is glued up
};

template <>
inline constexpr std::string_view kWords<Step>[] = {"crosscut-over-length",
                                                    "rip-over-width",
                                                    "first-face-and-edge",
                                                    "first-thickness",
                                                    "glue-up-boards",
                                                    "face-and-edge",
                                                    "thickness",
                                                    "rip-to-width",
                                                    "crosscut-to-length",
                                                    "cut-sheet",
                                                    "glue-edge-strips",
                                                    "cut",
                                                    "glue-up",
                                                    "fit"};
static_assert(std::size(kWords<Step>) == static_cast<std::size_t>(Step::fitting) + 1);

struct Task {
  PieceOf of;
  Process process = Process::groove;
  /// What of its piece it makes, by index into the piece's features; of sawing and milling nothing.
  std::vector<std::size_t> features;
  /// What it makes more of that another task makes first, as the second cheek of a tenon.
  std::vector<std::size_t> goes_on_with;
  Operation setting = {};  // its runs are those of this piece
  Triple size = {};        // of the piece as it comes to the machine
  Step step = Step::cut;
  std::size_t strips = 1;  // that it is of, until they are glued together
  std::size_t group = 0;   // of what is glued up: which group of its item's

  /// Where the work comes in; of sawing and milling, that has no runs, nothing to speak of.
  WorkedSide side() const {
    return setting.runs.empty() ? WorkedSide() : setting.runs.front().side;
  }
};

}  // namespace haunch
