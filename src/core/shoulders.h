// Where the shoulders of a piece stand, and the line that its tenons' depth counts from.
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "haunch/wood.h"

namespace haunch {

/// The line on a piece from which its tenon's depth counts, and all places that are told from the
/// shoulder: the shoulder itself, the one of a long and a short shoulder that stands on the sight
/// edge, or that edge alone, where both stand on past it.
enum class ShoulderLine : unsigned char { shoulder, face_shoulder, back_shoulder, sight_line };

template <>
inline constexpr std::string_view kWords<ShoulderLine>[] = {"shoulder", "face shoulder",
                                                            "back shoulder", "sight line"};

/// The shoulders at one end of a piece, each from that end, which is its tenon's.
struct EndShoulders {
  Length line;        // to that line
  Length face, back;  // to the shoulder in front of the tenon and to the one behind it

  friend bool operator==(const EndShoulders&, const EndShoulders&) = default;
};

/// The shoulders of a piece at the low end of its length (foot, left end) and at the high one.
struct Shoulders {
  std::optional<EndShoulders> low, high;
  ShoulderLine line = ShoulderLine::shoulder;

  bool any() const { return low || high; }
  /// What the line at the low end is: at an end with equal shoulders they are.
  ShoulderLine line_at_low_end() const;
  /// What lies between two such lines of a piece this long; from an end that has none, to that end.
  Length between(Length EndShoulders::*which, Length piece) const;

  friend bool operator==(const Shoulders&, const Shoulders&) = default;
};

/// The shoulders that one joint closes on, of the piece that enters it.
struct JointShoulders {
  bool at_low = false;   // of the two ends of that piece
  Length face, back;     // shoulder to shoulder in front of the tenons and behind them
  bool straight = true;  // both in one line; else one is longer than the other, or they are coped

  friend bool operator==(const JointShoulders&, const JointShoulders&) = default;
};

/// Nothing where a joint has no shoulder.
std::optional<JointShoulders> shoulders_at(const Joint& joint, const Piece& enters,
                                           const Shoulders& shoulders);

/// Of every piece, in their order.
std::vector<Shoulders> shoulders_of(const Assembly& wood);

}  // namespace haunch
