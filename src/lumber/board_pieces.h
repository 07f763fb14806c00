// What a board comes apart into: every piece that its steps leave, each once, so that the pieces
// and the blade's dust are the board again.
#pragma once

#include <string_view>
#include <utility>
#include <vector>

#include "cutting.h"

namespace haunch::lumber {

enum class PieceKind : unsigned char {
  part,
  kept,   // an offcut
  trim,   // an end or edge of the board
  scrap,  // the rest, defects among it
};

struct BoardPiece {
  PieceKind kind = PieceKind::scrap;
  Spot spot;
  std::size_t cut = 0;  // of a part: index into BoardPlan::cuts
};

/// In the order in which the steps free them.
std::vector<BoardPiece> pieces_of(const BoardPlan& board, const Stock& stock);

/// What lies below the blade after a step, and what lies above it; either may be nothing.
std::pair<Spot, Spot> sides_of(const Step& step);
bool is_something(const Spot& spot);

/// The step that a piece goes to, if any.
const Step* step_of(const BoardPlan& board, const Spot& spot);
const Cut* part_at(const BoardPlan& board, const Spot& spot);
bool is_kept(const BoardPlan& board, const Spot& spot);

}  // namespace haunch::lumber
