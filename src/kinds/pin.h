// Drawbored pins: a tenon held by round pegs right through both cheeks of its mortise. The tenon's
// holes stand nearer to its shoulder than the mortise's, by the draw, so that a pin driven in pulls
// the joint home.
#pragma once

#include <optional>
#include <utility>
#include <vector>

#include "end_joint.h"
#include "haunch/wood.h"

namespace haunch {

struct PinDesign {
  Length diameter;              // of the holes, and of the pins that are driven into them
  Length from_shoulder;         // to the middle of the holes through the cheeks
  Length draw;                  // the tenon's holes are so much nearer to its shoulder
  std::optional<Length> depth;  // from the face side; none: right through
  Length over;                  // sawn so much longer: its taper, and what is struck
  std::vector<Length> middles;  // across the width of the piece with the tenon, lowest first

  bool empty() const { return middles.empty(); }
};

/// Through the cheeks and the tenons of the end's first joint: a piece each, and a joint each with
/// both.
class Pins : public EndJoint {
 public:
  explicit Pins(PinDesign pins) : pins_(std::move(pins)) {}
  void cut(Assembly&, const End&) const override {}
  Own own_pieces() const override { return Own::pins; }
  void add_own_pieces(Assembly& assembly, const End& end) const override;

 private:
  PinDesign pins_;
};

}  // namespace haunch
