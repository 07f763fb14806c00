#include "second_face.h"

#include <algorithm>
#include <map>

namespace haunch {
namespace {

/// How deep a piece was worked at its first face, and from which of them.
struct FirstFace {
  bool from_high = false;
  Length depth;
};

}  // namespace

void tell_second_faces(std::vector<Setup>& setups, const std::vector<SetupItem>& items) {
  constexpr std::size_t kThickness = 2;
  std::map<PieceOf, FirstFace> first_faces;
  for (Setup& setup : setups) {
    const auto depth = size_of(setup.settings, SizeName::depth);
    const bool is_of_face = setup.process == Process::rebate || setup.process == Process::raise;
    if (!depth || !is_of_face || setup.step != Step::cut) continue;
    for (SetupPiece& piece : setup.pieces) {
      const WorkedSide& side = piece.runs.front().side;
      if (side.into != kThickness) continue;
      const auto [first, is_new] = first_faces.emplace(piece.of, FirstFace{side.from_high, *depth});
      if (is_new || first->second.from_high == side.from_high) continue;
      const SetupItem& item = items[piece.of.item];
      const Length thickness = item.wood->pieces[piece.of.piece].blank[kThickness];
      const Length leaves = thickness - first->second.depth - *depth;
      if (leaves > Length())
        piece.second_face = SecondFace{leaves, first->second.depth + item.most_unequal};
    }
  }
}

}  // namespace haunch
