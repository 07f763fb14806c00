// What is worked on the pieces of an assembly: one setting of a machine, and all that is run with
// it. Plain values, made once from the wood; sheets, set-ups and reports only lay them out.
#pragma once

#include <iterator>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "haunch/wood.h"
#include "shoulders.h"

namespace haunch {

/// Which cut of a feature an operation makes, where one setting does not make all of it: a tenon's
/// cheeks whose shoulders are not in one line, square or coped over a moulding, its haunches, what
/// opens a mortise for wedges.
enum class Cut : unsigned char {
  whole,
  face_cheek,
  back_cheek,
  face_cope,
  back_cope,
  haunch,
  flare,
};

template <>
inline constexpr std::string_view kWords<Cut>[] = {
    "whole", "face-cheek", "back-cheek", "face-cope", "back-cope", "haunch", "flare"};
static_assert(std::size(kWords<Cut>) == static_cast<std::size_t>(Cut::flare) + 1);

/// A line that places are told from. The first ones are a piece's own; the last ones stand in for
/// its ends where a fitting has to agree with what hangs beside it.
enum class Line : unsigned char {
  foot,
  lower_end,
  left_end,
  front_end,
  rear_end,
  lower_edge,
  left_edge,
  inner_face,
  lower_face,
  top,
  left,
  right,
  sill,
  head,
  transom,
};

template <>
inline constexpr std::string_view kWords<Line>[] = {
    "foot",       "lower end", "left end",   "front end",  "rear end",
    "lower edge", "left edge", "inner face", "lower face", "top",
    "left",       "right",     "sill",       "head",       "transom"};
static_assert(std::size(kWords<Line>) == static_cast<std::size_t>(Line::transom) + 1);

/// A side of a piece, through which the work comes in: across which of its own axes, and whether
/// from the high end of it.
struct WorkedSide {
  std::size_t into = 1;
  bool from_high = false;

  friend bool operator==(const WorkedSide&, const WorkedSide&) = default;
};

/// A place told from a shoulder of its piece, which that is where a long and a short one differ.
struct FromShoulder {
  Length near;
  ShoulderLine line = ShoulderLine::shoulder;

  friend bool operator==(const FromShoulder&, const FromShoulder&) = default;
};

/// Where across its piece something lies that is worked in a face of it: from the edge in front or
/// below, of what stands upright in its front the left one.
struct AcrossFace {
  Length near;                // of a hole its middle
  std::optional<Length> far;  // but of a hole

  friend auto operator<=>(const AcrossFace&, const AcrossFace&) = default;
};

/// One place of one piece where an operation is run.
struct Run {
  std::size_t piece = 0;
  std::size_t feature = 0;           // what it makes, by index into its piece's features
  std::optional<std::size_t> joint;  // that it serves, by index into Assembly::joints
  WorkedSide side;
  Line from = Line::foot;
  Length near;                // from that line; of a hole its middle
  std::optional<Length> far;  // but of a hole
  std::optional<FromShoulder> from_shoulder = {};
  std::optional<Length> straight = {};  // of a mortise: what is free for a tenon with square edges
  std::optional<Line> to = {};          // the other end, where a place is told from both
  std::optional<Length> from_other_end = {};  // from there to the far end, or the middle
  std::optional<AcrossFace> across = {};      // of what does not go from edge to edge

  Length extent() const { return far.value_or(near) - near; }
};

/// One setting and its runs.
struct Operation {
  FeatureKind makes = FeatureKind::groove;
  Cut cut = Cut::whole;
  std::vector<NamedSize> settings = {};
  bool through = false;      // right through the piece
  bool open_end = false;     // of a mortise: at its piece's end
  bool both_faces = false;   // run from the face side and from the back
  std::string profile = {};  // of a moulding that the shop drew itself: its name
  std::vector<Run> runs = {};

  /// 0 where it has no such setting.
  Length setting(SizeName name) const;
  bool has(SizeName name) const;
};

/// Whether one setting does for both.
bool set_alike(const Operation& a, const Operation& b);

}  // namespace haunch
