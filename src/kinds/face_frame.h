// The kind of work `face-frame`: the frame at the front of a case, by itself.
#pragma once

#include <string_view>

#include "document.h"
#include "kind.h"

namespace haunch {

JobReading read_face_frame(const Value& item, const ShopDefaults* shop,
                           std::string_view default_id);

}  // namespace haunch
