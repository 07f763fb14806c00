// Hinges with a cup: bored in the back of a leaf, with a plate on what it hangs on.
#pragma once

#include "haunch/wood.h"
#include "ledger.h"

namespace haunch {

/// Sizes from the hinge maker's sheet.
struct CupHinges {
  std::optional<int> number;  // of each leaf; silent: by its height
  Length diameter, depth;     // of the cup's hole
  Length from_edge;           // the leaf's edge to the rim of the cup
  Length from_end;            // the leaf's ends to the middles of the outer cups
  Length plate;               // the front edge of what it hangs on to the plate's row of holes
};

CupHinges settle_cup_hinges(Ledger& ledger);

/// How many a leaf so high has, where nothing is said: two to 40 in, three to 60, four to 80, then
/// five (a hinge maker's chart).
int usual_cup_hinges(Length height);

/// Bores the cups in a leaf's stile and the plates' holes in what it hangs on. `behind`: how far
/// the leaf stands in the case; nothing of one that lies over its front.
void let_in_cups(Assembly& assembly, std::size_t leaf, std::size_t post, bool hinged_right,
                 const CupHinges& hinges, Length behind);

}  // namespace haunch
