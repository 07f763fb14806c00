// What a drawer's spec chooses from by a word.
#pragma once

#include <string_view>

namespace haunch {

/// Its front is worked into the corners of the drawer, or fixed on before a box.
enum class DrawerFront { in_one, applied };

/// How front and back meet the sides.
enum class DrawerCorner { lapped_dovetail, dovetail, finger, rebated, tongued, housed, dowel };

/// What it runs on.
enum class RunnerKind { wood, metal };

/// What holds its bottom: grooves in the sides, or in slips that are glued to sides too thin for
/// that.
enum class BottomFit { grooved, slips };

}  // namespace haunch
