// What a shop works wood with: machines, what each can do, their cutters, and ways of holding the
// work. Plain values, of a shop file or as is usual.
#pragma once

#include <array>
#include <cstddef>
#include <iterator>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "haunch/length.h"
#include "haunch/wood.h"

namespace haunch {

/// What is done to wood at one machine or by hand.
enum class Process : unsigned char {
  // from boards to pieces
  crosscut,
  rip,
  surface,  // a first face and edge made true
  thickness,
  cut_sheet,
  // joints, edges, holes
  mortise,
  groove,
  rebate,
  tenon,
  cope,
  house,
  dovetail,
  finger,
  mould,
  raise,
  mitre,
  curve,
  taper,
  notch,
  bore,
  recess,
  // and together
  glue,
};

template <>
inline constexpr std::string_view kWords<Process>[] = {
    "crosscut", "rip",   "surface", "thickness", "cut-sheet", "mortise", "groove", "rebate",
    "tenon",    "cope",  "house",   "dovetail",  "finger",    "mould",   "raise",  "mitre",
    "curve",    "taper", "notch",   "bore",      "recess",    "glue"};
static_assert(std::size(kWords<Process>) == static_cast<std::size_t>(Process::glue) + 1);

struct Cutter {
  std::string name;
  std::optional<Length> width;  // or diameter; of a blade that has none to speak of: nothing
  std::optional<Length> reach;  // the deepest that it cuts; nothing: not told
  std::optional<Length> step;   // the deepest in one pass; nothing: all at once
};

/// Where the side that is worked looks while it is worked.
enum class WorkedLooks : unsigned char { up, down, sideways };

template <>
inline constexpr std::string_view kWords<WorkedLooks>[] = {"up", "down", "sideways"};

/// What the datum of a piece lies against: its face side, or of what is worked in a face its face
/// edge.
enum class DatumLies : unsigned char { on_table, at_fence };

template <>
inline constexpr std::string_view kWords<DatumLies>[] = {"table", "fence"};

/// From `least` to `most`, both included; nothing: no limit.
struct SizeRange {
  std::optional<Length> least, most;
};

/// One way of holding the work at a machine.
struct Holding {
  std::string name;
  WorkedLooks worked = WorkedLooks::up;
  DatumLies datum = DatumLies::at_fence;
  std::array<SizeRange, 3> size;     // length, width, thickness of the piece
  std::optional<Length> room_below;  // for a piece that stands upright
};

struct Machine {
  std::string name;
  std::vector<Process> does;
  std::vector<Cutter> cutters;  // empty: nothing is told of them
  std::vector<Holding> holds;   // the first that does is taken; empty: as the machinist likes
  std::array<std::optional<Length>, 3> smallest;  // length, width, thickness that run safely
  double set_minutes = 0;                         // to set it up
  double piece_minutes = 0;                       // a piece
  double metre_minutes = 0;                       // a metre of cut
};

}  // namespace haunch
