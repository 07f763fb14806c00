// Mitred corners held by a spline: both pieces are cut at 45 degrees from the sight corner to the
// outer one, and a slip of wood stands across the mitre in a stopped slot in each face.
//
// A corner is reckoned from its sight corner: p outwards across the stile, q outwards across the
// rail, both from 0 to the width w that the two pieces share. The mitre is p = q. Everything slopes
// at 45 degrees and has its corners on whole steps, so that it fits exactly.
#pragma once

#include "end_joint.h"
#include "haunch/wood.h"

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

/// Both ends of a strip at 45 degrees, as it lines the side of an opening; its long side lies
/// there.
Feature mitred_ends(const Triple& blank, bool long_side_low);
/// The same where the strips that it meets are not as wide as it is: of its short side each end
/// loses as much as the one there is wide.
Feature mitred_ends(const Triple& blank, bool long_side_low, Length at_low, Length at_high);

extern const Measures kMitreMeasures;
extern const Measures kSplineMeasures;

/// Between the end of a rail and the end of a stile, which receives, as wide as each other: both
/// blanks reach to the outer corner.
class Mitre : public EndJoint {
 public:
  Mitre(Length width, const SplineDesign& spline) : width_(width), spline_(spline) {}
  Length reach() const override { return width_; }
  bool runs_on() const override { return true; }
  bool fills_groove() const override { return true; }
  void cut(Assembly& assembly, const End& end) const override;
  /// A spline: the slots, the piece, and a joint with each of the two.
  Own own_pieces() const override { return Own::splines; }
  void add_own_pieces(Assembly& assembly, const End& end) const override;

 private:
  Length width_;
  SplineDesign spline_;
};

}  // namespace haunch
