// The joints that a door may be made with, and where each can be.
#pragma once

#include <array>
#include <string_view>

namespace haunch {

/// How a rail or muntin is joined to the piece it ends on.
enum class JointWord { haunched, twin, loose, through, bridle, dowel, half_lap, mitre };

/// A top or bottom rail at its stiles, a middle rail there, a muntin at its rails.
enum class JointPlace { corner, middle, muntin };

inline constexpr std::array kJointPlaces = {JointPlace::corner, JointPlace::middle,
                                            JointPlace::muntin};

}  // namespace haunch
