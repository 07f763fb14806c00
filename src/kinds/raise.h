// Raised panels: a tongue round the edge, a bevel or a cove from it up to a step, and the field
// within.
#pragma once

#include <vector>

#include "haunch/wood.h"

namespace haunch {

/// What leads from the tongue up to the field.
enum class Profile { bevel, cove };

/// How one face of a panel is raised, the same along all four edges.
struct RaiseDesign {
  Profile profile = Profile::bevel;
  Length width;     // panel edge to field
  Length tongue;    // of that, flat at the edge
  Length shoulder;  // step down from the field
};

/// Whether a cove can rise as high over its run: no higher than it is wide.
bool cove_can_rise(const RaiseDesign& raise, Length depth);

/// Works a raise on one face of a panel: `depth` of wood off over the tongue, from the face at 0 or
/// the back at the blank's thickness. `play`: between the tongue and its groove's lip on that face.
/// The wood of a cove is drawn in chords on its hollow side, so that it is never thinner than it is
/// cut, and wedges no later; where the lip comes to it, it is drawn on the circle itself.
void raise_round(Piece& panel, const RaiseDesign& raise, Length depth, bool at_back, Length play);

/// A stretch of a raise's depth below the field, and how far in from the edge it is cut there.
struct RaiseLayer {
  Length from, to, in;
};

/// A raise in layers, each no thicker than `most` where it slopes, and none cut further in than the
/// raise is. One begins where the lip of the groove comes to the slope.
std::vector<RaiseLayer> raise_layers(const RaiseDesign& raise, Length depth, Length play,
                                     Length most);

}  // namespace haunch
