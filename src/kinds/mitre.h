// Mitred corners held by a spline: both pieces are cut at 45 degrees from the sight corner to the
// outer one, and a slip of wood stands across the mitre in a stopped slot in each face.
//
// A corner is reckoned from its sight corner: p outwards across the stile, q outwards across the
// rail, both from 0 to the width w that the two pieces share. The mitre is p = q. Everything slopes
// at 45 degrees and has its corners on whole steps, so that it fits exactly.
#pragma once

#include "haunch/wood.h"
#include "junction.h"

namespace haunch {

struct SplineDesign {
  Length from;        // p = q of the spline's near end, on the mitre
  Length run;         // from there to its far end, in p and in q
  Length depth;       // how far it goes into each piece, square to the mitre
  Length reach;       // the same in p and in q
  Length room;        // all round it in its slot, level or upright
  Length slot_width;  // across the thickness
  Length thickness;   // of the spline: less, by the fit allowance
  Length from_face;   // face side to the near wall of the slot

  /// What the pieces must leave outside of `from + run`, for slot and spline.
  Length beyond() const { return reach + room; }
};

/// A size along a line at 45 degrees, of one that is level or upright; to the nearest step.
Length along_mitre(Length level);
/// The other way round.
Length level_of(Length along_mitre);

/// Cuts the mitre between the end of a stile, which receives, and the end of a rail, whose blanks
/// both reach to the outer corner, and adds the joint.
void mitre(Assembly& assembly, const Junction& junction);

/// Lets a spline in to a mitre: the slots, the piece, and a joint with each of the two.
void spline(Assembly& assembly, const Junction& junction, const SplineDesign& design);

}  // namespace haunch
