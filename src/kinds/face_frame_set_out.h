// From a face frame's settled sizes to its wood.
#pragma once

#include "face_frame_plan.h"
#include "haunch/wood.h"

namespace haunch {

/// The frame alone: of kind face_frame, under the path "face-frame", its zero at its lower left
/// corner at its face.
Assembly set_out_face_frame(const FaceFramePlan& plan);

}  // namespace haunch
