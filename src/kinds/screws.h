// Screws: an end stands flat on what receives it and is drawn up by screws, from slanting pockets
// in its back, or through what receives it, sunk there below plugs.
#pragma once

#include <utility>
#include <vector>

#include "end_joint.h"
#include "haunch/wood.h"

namespace haunch {

/// Where screws come from.
enum class ScrewsBy : unsigned char { pocket, plug };

struct ScrewDesign {
  ScrewsBy by = ScrewsBy::pocket;
  Length hole;   // diameter of the hole that the screw goes through
  Length head;   // diameter of the pocket, or of the plug
  Length seat;   // from the end to where the head comes to lie; of plugs how deep they are
  Length pilot;  // of plugged ones, how deep the end is bored for the thread
  std::vector<Length> middles;  // of screws across the width of the piece whose end they hold

  /// Whether there is wood for its seat in a piece so thick.
  bool fits(Length thickness) const;
};

extern const Measures kScrewMeasures;

class Screws : public EndJoint {
 public:
  explicit Screws(ScrewDesign screws) : screws_(std::move(screws)) {}
  void cut(Assembly& assembly, const End& end) const override;

 private:
  ScrewDesign screws_;
};

}  // namespace haunch
