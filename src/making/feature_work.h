// What is worked along edges, on faces and for fittings: all that no single joint asks for.
#pragma once

#include "making.h"

namespace haunch {

void add_feature_work(Making& making, const Assembly& wood, std::size_t piece);

}  // namespace haunch
