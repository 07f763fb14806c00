// The ways to join a leaf's members: each a row of what planning asks of it, its own keys, and what
// makes it.
#pragma once

#include <cstddef>
#include <optional>
#include <span>

#include "end_joint.h"
#include "joint_words.h"
#include "key.h"

namespace haunch {

struct DoorPlan;

/// An end of a rail or, where none is said, of a muntin.
struct DoorEnd {
  const DoorPlan& plan;
  std::optional<std::size_t> rail;
  Length receiver;  // how wide what it ends on is
};

struct DoorJoint {
  JointWord word = JointWord::haunched;
  EndJoints (*made)(const DoorEnd& end) = nullptr;
  std::span<const Key> keys = {};  // of no other joint
  bool tenons = false;             // on the end, or let in to it
  bool loose = false;              // as pieces of their own
  bool haunches = false;           // beside them, in the groove
  bool twin = false;               // side by side in the thickness
  bool through = false;            // right through what receives them
  bool wedged = false;             // there
  bool open_end = false;           // in a slot that is open at its piece's end
  bool lapped = false;             // the members themselves lie over each other

  bool has_own_tenons() const { return tenons && !loose; }
  /// Whether its tenons end in the wood that they enter.
  bool is_blind() const { return tenons && !through; }
};

/// All of them, in the order of their words.
std::span<const DoorJoint> door_joints();
const DoorJoint& door_joint(JointWord word);

/// What holds an end of a rail in a stile so wide.
EndJoints joints_of_rail(const DoorPlan& plan, std::size_t rail, Length stile);
/// What holds each end of a muntin.
EndJoints joints_of_muntin(const DoorPlan& plan);

}  // namespace haunch
