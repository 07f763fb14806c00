// Keys of face frames. A face frame's own spec leaves "face_frame." out.
#pragma once

#include "key_row.h"

namespace haunch::rows {

inline constexpr KeyRow kFaceFrameKeys[] = {
    object("face_frame", kOfCabinet | kOfShop, "the frame on the front of the case"),
    length("face_frame.thickness", kOfFaceFrame | kOfCabinet | kOfShop, Change::none,
           "of all its members", "20 mm, 3/4 in"),
};

}  // namespace haunch::rows
