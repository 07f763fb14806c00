// Rods: what is set out once, full size, along the height, the width and the depth of what is made,
// and carried from there to the pieces. Plain values, from the wood and how it is worked.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "making.h"

namespace haunch {

enum class RodDirection : unsigned char { height, width, depth };

template <>
inline constexpr std::string_view kWords<RodDirection>[] = {"height", "width", "depth"};

/// What the figures of a rod run from: "foot", "left", "front".
std::string_view zero_of(RodDirection direction);

/// A line along a rod, for pieces of one role that are laid on it.
struct RodStrip {
  std::string of;  // what they are parts of: "leaf", "door" of "door-1" and "door-2", "case"
  Role role = Role::stile;
  std::vector<std::size_t> pieces;  // by index into Assembly::pieces
};

/// What a mark stands for on some pieces of a strip.
struct RodName {
  std::size_t strip = 0;            // by index into Rod::strips
  std::string what;                 // "shoulder", "mortise begins", "top hinge ends"
  std::vector<std::size_t> pieces;  // that it is carried to
  std::vector<std::size_t> takes;   // what comes in there
};

/// A line squared across a rod.
struct RodMark {
  Length at;                   // from the rod's zero; less than none before it
  std::vector<RodName> names;  // never empty
};

/// From where to where a piece, or a mortise in one, lies along a rod.
struct RodStretch {
  std::size_t strip = 0;
  Length from, to;
  bool hollow = false;

  friend bool operator==(const RodStretch&, const RodStretch&) = default;
};

struct Rod {
  RodDirection direction = RodDirection::height;
  Length length;  // of what is made
  std::vector<RodStrip> strips;
  std::vector<RodMark> marks;  // in order along it, no two at one place; never empty
  std::vector<RodStretch> stretches;
  std::string of = {};  // what of the work it is of, where not of all: "till"
};

Rod rod_of(const Assembly& wood, const Making& making, RodDirection direction);

}  // namespace haunch
