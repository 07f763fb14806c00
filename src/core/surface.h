// The sides of a piece as it stands in its assembly.
#pragma once

#include "haunch/trade.h"

namespace haunch {

/// Seen from the face side.
enum class Surface { face, back, left, right, upper, lower };

template <>
inline constexpr std::string_view kWords<Surface>[] = {"face",  "back",  "left",
                                                       "right", "upper", "lower"};

}  // namespace haunch
