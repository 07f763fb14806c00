// What comes with an item but has no place in it: a cornice, a pelmet, packers, staves of a
// worktop. As a spec says it.
#pragma once

#include <string>
#include <vector>

#include "edge.h"
#include "haunch/length.h"
#include "haunch/wood.h"
#include "surface.h"

namespace haunch {

/// What is cut into an extra.
enum class ExtraCutKind { groove, rebate, hole, mitre };

template <>
inline constexpr std::string_view kWords<ExtraCutKind>[] = {"groove", "rebate", "hole", "mitre"};

/// Sides are those of the piece as it lies before one, face up: its length from the left to the
/// right, its width from the lower edge to the upper.
struct ExtraCut {
  ExtraCutKind kind = ExtraCutKind::groove;
  Surface in = Surface::face;      // the side that it is cut in to; of a mitre the end
  Surface along = Surface::upper;  // of a rebate the edge or end; of a mitre the longer side
  Length start;                    // left end to a groove's near end, or to the middle of a hole
  Length from;                     // lower edge, or face, to its near wall or to its middle
  Length length;                   // of a groove; zero: to the right end
  Length width;                    // of a groove or rebate; of a hole its diameter
  Length depth;                    // zero: right through
};

/// A long edge that a moulding is stuck on.
struct ExtraEdge {
  Edge edge = Edge::low;
  EdgeDesign design;
};

struct ExtraSpec {
  std::string name;
  int quantity = 1;
  Triple size;           // length, width, thickness
  std::string material;  // empty: the species of the item
  std::vector<ExtraEdge> edges;
  std::vector<ExtraCut> cuts;
};

}  // namespace haunch
