// A second opinion on an assembly: its wood rebuilt from blanks and cuts, and judged as at a dry
// fit.
//
// Written from the design alone. It shares nothing with the program's checks or its setting out, so
// that the same mistake is not made twice, and it measures everything to the step.
#pragma once

#include <array>
#include <compare>
#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "haunch/wood.h"

namespace haunch::test {

/// A block of wood in the assembly's axes, in steps.
struct Block {
  std::array<std::int64_t, 3> low{};
  std::array<std::int64_t, 3> high{};

  friend auto operator<=>(const Block&, const Block&) = default;
};

/// What two have in common; of two that are apart its low end lies above its high one somewhere.
Block common(const Block& a, const Block& b);
/// The least that holds both.
Block hull(const Block& a, const Block& b);
bool has_volume(const Block& block);

/// What is left of a piece: its blank, and its wood as blocks that do not overlap. Two pieces of
/// the same shape, grain and place give the same blocks, however their cuts were written.
struct Wood {
  Role role;
  Block blank;
  std::vector<Block> blocks;

  friend auto operator<=>(const Wood&, const Wood&) = default;
};

/// The wood of every piece, in the order of the pieces.
std::vector<Wood> wood_of(const Assembly& assembly);

enum class FaultKind {
  cut_outside_blank,
  shared_wood,
  clearance,  // not as designed
  shoulder,   // not seated
  haunch,
  tenon_sizes,  // the joint's figures are not those of the wood
  outside,      // enters wood that is not there
  extent,       // the pieces do not add up to the size
  hole,
  role,
  panel_edges,  // a panel that is not held on four sides

  // What a spec may ask for though it is bad work; the checks fail or caution it, working it does
  // not.
  meeting,     // tenons, or tenon and panel, that meet inside a piece or beyond it
  broken,      // a mortise that breaks into another cut or through its piece has no wall or bottom
               // there
  through,     // a tenon at least as deep as the piece that receives it is wide
  proud,       // a panel that stands out of the thickness
  undivided,   // tenons of one joint with no gap between them
  no_bite,     // a panel's edge that does not reach into its groove
  thin_panel,  // a flat panel that is looser in its grooves than designed
};

struct Fault {
  FaultKind kind;
  std::string what;
};

/// True for a fault that comes of what the spec asked for, not of how it was worked.
bool asked_for(FaultKind kind);

/// Everything that is wrong with an assembly; empty when it goes together as designed.
std::vector<Fault> judge(const Assembly& assembly);

}  // namespace haunch::test
