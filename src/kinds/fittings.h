// Hinges, locks and other fittings let in to the pieces of a leaf, and fittings that a spec
// describes in any piece.
#pragma once

#include <string_view>
#include <vector>

#include "document.h"
#include "door_plan.h"
#include "ledger.h"
#include "spec.h"

namespace haunch {

/// A round hole is drawn as a polygon of so many sides about its circle: exact along the piece's
/// axes, elsewhere up to half a percent of the radius to the side of less wood.
inline constexpr int kHoleSides = 32;

/// Which of the edges across the width of a piece lie on the outside of the leaf or other group
/// that it is of, or of a pair; places across it are told from the one that alone does, else from
/// its low edge. What is wide from front to back has none: it is told from its front edge.
struct OuterEdges {
  bool low = false, high = false;
};
OuterEdges outer_edges(const Assembly& assembly, const Piece& piece);

/// Cuts the recesses of `fittings` in two stiles whose face edges look at each other.
void let_in(Assembly& assembly, std::size_t left_stile, std::size_t right_stile,
            const FittingsPlan& fittings);

/// The places of fittings that a spec describes, which a remedy may change.
void add_fitting_levers(Ledger& ledger);
/// Sets the one of a lever's key; false where that is of no fitting.
bool set_fitting_place(Spec& spec, std::string_view key, Length place);

/// Cuts the recesses of the fittings that a spec describes. A problem is one of the spec's value;
/// lengths are told in `unit`.
std::vector<Problem> let_in_described(Assembly& assembly, const Spec& spec, Unit unit);

}  // namespace haunch
