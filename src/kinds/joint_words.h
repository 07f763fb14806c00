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

/// Why a spec of seasons with mitres is refused.
inline constexpr std::string_view kNoSeasonsOfMitres =
    "seasons are not worked of mitres, which open as their members swell; take it out, or choose "
    "another joint";

}  // namespace haunch
