// Dovetails: tails on the end of one piece, in sockets between the pins of another, right through
// it or with a lap left before them.
#pragma once

#include <optional>
#include <vector>

#include "end_joint.h"
#include "haunch/wood.h"
#include "tails.h"

namespace haunch {

/// How tails are spaced. Widths are at the tails' ends, where tails are widest and pins narrowest.
struct TailSpacing {
  Strip between;  // the edges of what receives them, from the low edge of their piece
  Length spread;  // how much narrower a tail is at its root, at each side
  Length pin;
  Length half_pin;            // beside each outer tail
  std::optional<int> number;  // else as many as none is wider than `widest`
  Length widest;
  Length whole;                      // tails are whole multiples of this
  bool half_pin_is_least = false;    // half pins take up what that leaves; else the upper one does
  std::optional<Strip> groove = {};  // that is to come out in a tail
};

/// Tails where they are widest, from the low edge of their piece; all alike. Where the number is
/// open fewer, if the groove falls wholly in a tail then. Empty where they have no room.
std::vector<Strip> space_tails(const TailSpacing& spacing);

/// Whether a groove along the piece comes out in one of the tails, all along it.
bool is_in_a_tail(const std::vector<Strip>& tails, Length spread, const Strip& groove);

struct DovetailDesign {
  std::vector<Strip> tails;  // as of space_tails
  Length length;             // of tails: the receiver's thickness, or less by a lap
  Length spread;
};

extern const Measures kDovetailMeasures;
extern const Measures kLappedDovetailMeasures;

class Dovetail : public EndJoint {
 public:
  explicit Dovetail(DovetailDesign dovetail) : dovetail_(std::move(dovetail)) {}
  Length reach() const override { return dovetail_.length; }
  void cut(Assembly& assembly, const End& end) const override;

 private:
  DovetailDesign dovetail_;
};

}  // namespace haunch
