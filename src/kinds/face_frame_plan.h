// A face frame with every size settled: what the spec states, and the trade's or the shop's
// defaults for the rest.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "dowel.h"
#include "edge.h"
#include "end_joint.h"
#include "half_lap.h"
#include "haunch/wood.h"
#include "layout.h"
#include "pin.h"
#include "planned.h"
#include "screws.h"
#include "spec.h"
#include "tenon.h"

namespace haunch {

/// A stile, or a rail or mullion between others.
struct FaceMember {
  Role role = Role::stile;
  std::string name, key;
  Area at;  // between shoulders

  bool upright() const { return role != Role::rail; }
  Length width() const { return upright() ? at.width() : at.height(); }
};

/// What holds an end, settled.
struct Butted {};
struct Tenoned {
  TenonDesign tenon;
  MortiseDesign mortise;
  PinDesign pins = {};
};
using EndDesign = std::variant<Butted, Tenoned, DowelDesign, LapDesign, ScrewDesign>;

/// An end of a rail or mullion, and what it stands on.
struct FaceEnd {
  std::size_t enters = 0, receives = 0;  // members
  bool high = false;                     // the right or upper end
  EndDesign design;
};

/// Strips that line an opening at the frame's inner edges.
struct PlantedBead {
  Length width;  // as seen from the face
  bool mitred = true;
};

/// The frame's zero is its lower left corner at its face.
struct FaceFramePlan {
  Length width, height, thickness;
  Sides over;                       // how far it stands over the sides of its case
  std::vector<FaceMember> members;  // the stiles, left first; then each after what it ends on
  std::vector<FaceEnd> ends;        // of each rail and mullion its low one, then its high one
  ResolvedLayout layout;
  EdgeDesign edge;  // moulded where a bead is worked on it
  std::optional<PlantedBead> planted;

  /// Where its openings begin above its own foot.
  Length foot() const;
};

using PlannedFaceFrame = Planned<FaceFramePlan>;

/// A side where a face frame goes on over the next case: half of the mullion between the two.
struct SharedSide {
  Length width;
  Length over;  // of it, beyond the side of its case
};

/// What a case has of a face frame over several.
struct FrameShare {
  std::optional<SharedSide> left, right;  // else a stile of its own
  Length mullion;                         // width of every one
};

/// What a face frame is made for: by itself, or in a cabinet that says how its fronts meet it.
struct FaceFrameUse {
  Length width, height;  // over the frame
  bool in_cabinet = false;
  LayoutRules rules = {};                // widths of dividers are the frame's to fill in
  std::optional<FrameShare> share = {};  // of a frame that is made elsewhere, with its joints
};

/// What stands before a face frame's keys in the table, but not in a spec of a face frame alone.
inline constexpr std::string_view kFaceFrameRoot = "face_frame.";

/// Settles every size. `root`: kFaceFrameRoot for a face frame alone, nothing for one in a cabinet.
/// The layout must outlive the plan.
PlannedFaceFrame plan_face_frame(const Spec& spec, std::string_view root, const LayoutNode& layout,
                                 const FaceFrameUse& use);

/// What holds an end.
EndJoints joints_of(const EndDesign& design);

}  // namespace haunch
