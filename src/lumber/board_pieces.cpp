#include "board_pieces.h"

#include <algorithm>

namespace haunch::lumber {
namespace {

bool is_lesser(const Spot& a, const Spot& b, StepKind kind) {
  return kind == StepKind::rip ? a.width < b.width : a.length < b.length;
}

/// Follows a piece through the saw.
class Apart {
 public:
  explicit Apart(const BoardPlan& board) : board_(board) {}

  std::vector<BoardPiece> of(const Spot& whole) {
    follow(whole, false);
    return std::move(pieces_);
  }

 private:
  void follow(const Spot& spot, bool is_trim) {
    if (!is_something(spot)) return;
    const Cut* part = part_at(board_, spot);
    const Step* step = part == nullptr ? step_of(board_, spot) : nullptr;
    if (step == nullptr) {
      const PieceKind kind = part != nullptr         ? PieceKind::part
                             : is_kept(board_, spot) ? PieceKind::kept
                             : is_trim               ? PieceKind::trim
                                                     : PieceKind::scrap;
      pieces_.push_back(
          {kind, spot, part == nullptr ? 0 : static_cast<std::size_t>(part - board_.cuts.data())});
      return;
    }
    const auto [low, high] = sides_of(*step);
    const bool trims = step->reason == StepReason::trim;
    follow(low, trims && is_lesser(low, high, step->kind));
    follow(high, trims && is_lesser(high, low, step->kind));
  }

  const BoardPlan& board_;
  std::vector<BoardPiece> pieces_;
};

}  // namespace

std::vector<BoardPiece> pieces_of(const BoardPlan& board, const Stock& stock) {
  return Apart(board).of({Length(), Length(), stock.length, stock.width});
}

std::pair<Spot, Spot> sides_of(const Step& step) {
  Spot low = step.piece;
  Spot high = step.piece;
  if (step.kind == StepKind::rip) {
    low.width = step.from - step.piece.y;
    high.y = step.to;
    high.width = step.piece.y + step.piece.width - step.to;
  } else {
    low.length = step.from - step.piece.x;
    high.x = step.to;
    high.length = step.piece.x + step.piece.length - step.to;
  }
  return {low, high};
}

bool is_something(const Spot& spot) {
  return spot.length > Length() && spot.width > Length();
}

const Step* step_of(const BoardPlan& board, const Spot& spot) {
  const auto step = std::find_if(board.steps.begin(), board.steps.end(),
                                 [&](const Step& it) { return it.piece == spot; });
  return step == board.steps.end() ? nullptr : &*step;
}

const Cut* part_at(const BoardPlan& board, const Spot& spot) {
  const auto cut = std::find_if(board.cuts.begin(), board.cuts.end(),
                                [&](const Cut& it) { return it.spot == spot; });
  return cut == board.cuts.end() ? nullptr : &*cut;
}

bool is_kept(const BoardPlan& board, const Spot& spot) {
  return std::find(board.offcuts.begin(), board.offcuts.end(), spot) != board.offcuts.end();
}

}  // namespace haunch::lumber
