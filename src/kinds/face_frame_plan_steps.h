// The steps by which a face frame's sizes are settled.
#pragma once

#include <string_view>
#include <vector>

#include "door_defaults.h"
#include "face_frame_plan.h"
#include "ledger.h"

namespace haunch {

inline constexpr std::size_t kLeftStile = 0, kRightStile = 1;

/// Of members as they are seen from the face, beads worked on them with them.
struct FaceWidths {
  Length left, right;  // of the stiles, without what is left to scribe
  Length scribe_left, scribe_right;
  Length top, between, bottom;  // of rails; bottom 0: none
  Length mullion;

  Length left_stile() const { return left + scribe_left; }
  Length right_stile() const { return right + scribe_right; }
};

/// The book of a face frame, with what is usual for the joints of leaves so large.
class FaceLedger : public Ledger {
 public:
  FaceLedger(const Spec& stated_spec, std::string_view root)
      : Ledger(stated_spec, root), defaults(door_defaults(unit, Use::cabinet)) {}

  const DoorDefaults defaults;
  FaceWidths widths;

  const std::vector<Length>& cutters() const {
    return spec.cutters.empty() ? defaults.cutters : spec.cutters;
  }
  /// Of a bead: the groove beside it, a quarter of the whole.
  Length quirk(Length bead) const { return floor_divide(bead, 4); }
};

// face_frame_joint_plan.cpp: what holds each end.
void settle_face_joints(FaceLedger& ledger, FaceFramePlan& plan);

}  // namespace haunch
